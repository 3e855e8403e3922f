import { XMLParser } from "fast-xml-parser";
import { strFromU8, unzipSync } from "fflate";
import { getDocument } from "pdfjs-dist/legacy/build/pdf.mjs";

/** What a PDF says, read by pdf.js: text and links by page, and the size of its sheets in points. */
export async function readPdf(bytes: Uint8Array) {
  const loading = getDocument({ data: Uint8Array.from(bytes), useSystemFonts: false, verbosity: 0 });
  const file = await loading.promise;
  const pages: { text: string; links: string[]; width: number; height: number }[] = [];
  for (let number = 1; number <= file.numPages; number += 1) {
    const page = await file.getPage(number);
    const { items } = await page.getTextContent();
    const marks = (await page.getAnnotations()) as { readonly url?: string }[];
    const { width, height } = page.getViewport({ scale: 1 });
    pages.push({
      text: items.map((item) => ("str" in item ? item.str : "")).join(" "),
      links: marks.flatMap(({ url }) => url ?? []),
      width,
      height,
    });
  }
  await loading.destroy();
  return pages;
}

/** Without any space, so that where lines break does not matter. */
export const tight = (text: string) => text.replace(/\s+/gu, "");

type Xml = { readonly [name: string]: unknown };

const parser = new XMLParser({
  ignoreAttributes: false,
  attributeNamePrefix: "@",
  parseTagValue: false,
  trimValues: false,
  removeNSPrefix: true,
  isArray: (name) => ["tr", "tc", "ser", "pt", "p", "r", "Relationship"].includes(name),
});

/** Everything of one name anywhere in a tree, in order. */
export function all(node: unknown, name: string): unknown[] {
  if (Array.isArray(node)) return node.flatMap((one) => all(one, name));
  if (typeof node !== "object" || node === null) return [];
  return Object.entries(node).flatMap(([key, value]) =>
    key === name ? (Array.isArray(value) ? value : [value]) : all(value, name),
  );
}

const textOf = (node: unknown) =>
  all(node, "t")
    .map((one) => String(one))
    .join("");

/** A presentation's parts: its tables and charts as the file has them, its links, and what it embeds. */
export function readSlides(bytes: Uint8Array) {
  const files = unzipSync(bytes);
  const names = Object.keys(files);
  const parse = (name: string) => parser.parse(strFromU8(files[name] ?? new Uint8Array())) as Xml;
  const numbered = (pattern: RegExp) =>
    names
      .filter((name) => pattern.test(name))
      .sort((a, b) => Number(/(\d+)\.xml/.exec(a)?.[1]) - Number(/(\d+)\.xml/.exec(b)?.[1]));
  const slides = numbered(/^ppt\/slides\/slide\d+\.xml$/).map(parse);
  return {
    names,
    texts: slides.map(textOf),
    tables: slides.map((slide) => all(slide, "tr").map((row) => all(row, "tc").map(textOf))),
    charts: numbered(/^ppt\/charts\/chart\d+\.xml$/)
      .map(parse)
      .map((chart) =>
        all(chart, "ser").map((series) => {
          const { tx, cat, val } = series as Xml;
          const points = (node: unknown) => all(node, "pt").map((point) => String((point as Xml).v));
          return { name: points(tx)[0] ?? "", labels: points(cat), values: points(val) };
        }),
      ),
    links: names
      .filter((name) => /^ppt\/slides\/_rels\//.test(name))
      .flatMap((name) => all(parse(name), "Relationship") as Xml[])
      .filter((one) => one["@TargetMode"] === "External")
      .map((one) => String(one["@Target"])),
  };
}
