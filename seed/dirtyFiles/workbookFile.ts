import { strToU8, type Zippable, zipSync } from "fflate";

const HEAD = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>';
const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const PACKAGE = "http://schemas.openxmlformats.org/package/2006/relationships";

export interface WrittenSheet {
  readonly name: string;
  readonly state?: "hidden" | "veryHidden";
  /** What stands before, in and after the rows, as XML. */
  readonly before?: string;
  readonly rows: string;
  readonly after?: string;
  /** Remarks by place. */
  readonly comments?: Readonly<Record<string, string>>;
}

export interface WrittenWorkbook {
  readonly sheets: readonly WrittenSheet[];
  readonly strings?: readonly string[];
  /** Format codes; style number 1 is the first of them. */
  readonly formats?: readonly string[];
  readonly from1904?: boolean;
}

export const escapeXml = (text: string): string =>
  text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;").replaceAll('"', "&quot;");

const relation = (id: string, kind: string, target: string) =>
  `<Relationship Id="${id}" Type="${OFFICE}/${kind}" Target="${target}"/>`;

const relations = (inner: string) => `${HEAD}<Relationships xmlns="${PACKAGE}">${inner}</Relationships>`;

function stylesXml(formats: readonly string[]): string {
  const codes = formats.map((code, i) => `<numFmt numFmtId="${164 + i}" formatCode="${escapeXml(code)}"/>`);
  const cells = formats.map((_, i) => `<xf numFmtId="${164 + i}"/>`);
  return `${HEAD}<styleSheet xmlns="${MAIN}"><numFmts>${codes.join("")}</numFmts><cellStyleXfs><xf numFmtId="14"/></cellStyleXfs><cellXfs><xf numFmtId="0"/>${cells.join("")}</cellXfs></styleSheet>`;
}

function commentsXml(comments: Readonly<Record<string, string>>): string {
  const inner = Object.entries(comments).map(
    ([place, text]) => `<comment ref="${place}"><text><r><t>${escapeXml(text)}</t></r></text></comment>`,
  );
  return `${HEAD}<comments xmlns="${MAIN}"><commentList>${inner.join("")}</commentList></comments>`;
}

/** The parts of a workbook written by hand, so that a test says exactly what stands in the file. */
export function workbookParts({
  sheets,
  strings = [],
  formats = [],
  from1904,
}: WrittenWorkbook): Record<string, string> {
  const parts: Record<string, string> = {
    "_rels/.rels": relations(relation("r1", "officeDocument", "xl/workbook.xml")),
    "xl/workbook.xml": `${HEAD}<workbook xmlns="${MAIN}" xmlns:r="${OFFICE}">${from1904 ? '<workbookPr date1904="1"/>' : ""}<sheets>${sheets
      .map(({ name, state }, i) => {
        const shown = state ? ` state="${state}"` : "";
        return `<sheet name="${escapeXml(name)}" sheetId="${i + 1}"${shown} r:id="s${i + 1}"/>`;
      })
      .join("")}</sheets></workbook>`,
    "xl/_rels/workbook.xml.rels": relations(
      sheets.map((_, i) => relation(`s${i + 1}`, "worksheet", `worksheets/sheet${i + 1}.xml`)).join("") +
        relation("x1", "sharedStrings", "sharedStrings.xml") +
        relation("x2", "styles", "styles.xml"),
    ),
    "xl/sharedStrings.xml": `${HEAD}<sst xmlns="${MAIN}">${strings.map((text) => `<si>${text}</si>`).join("")}</sst>`,
    "xl/styles.xml": stylesXml(formats),
  };
  sheets.forEach(({ before = "", rows, after = "", comments }, i) => {
    parts[`xl/worksheets/sheet${i + 1}.xml`] =
      `${HEAD}<worksheet xmlns="${MAIN}">${before}<sheetData>${rows}</sheetData>${after}</worksheet>`;
    if (!comments) return;
    parts[`xl/worksheets/_rels/sheet${i + 1}.xml.rels`] = relations(
      relation("c1", "comments", `../comments${i + 1}.xml`),
    );
    parts[`xl/comments${i + 1}.xml`] = commentsXml(comments);
  });
  return parts;
}

/** Packs parts, as XML text or bytes, into an archive. */
export function packParts(parts: Readonly<Record<string, string | Uint8Array>>): Uint8Array<ArrayBuffer> {
  const bytes: Zippable = Object.fromEntries(
    Object.entries(parts).map(([name, part]) => [name, typeof part === "string" ? strToU8(part) : part]),
  );
  return new Uint8Array(zipSync(bytes, { mtime: "1980-01-01" }));
}

export const writtenWorkbook = (workbook: WrittenWorkbook): Uint8Array<ArrayBuffer> =>
  packParts(workbookParts(workbook));

/** A row of cells as XML: text inline, numbers as they are, null for no cell; or a cell's own XML. */
export function rowXml(
  number: number,
  cells: readonly (string | number | null | { readonly xml: string })[],
  attributes = "",
): string {
  const inner = cells.map((cell, index) => {
    if (cell === null) return "";
    if (typeof cell === "object") return cell.xml;
    const place = `${String.fromCharCode(65 + index)}${number}`;
    return typeof cell === "number"
      ? `<c r="${place}"><v>${cell}</v></c>`
      : `<c r="${place}" t="inlineStr"><is><t>${escapeXml(cell)}</t></is></c>`;
  });
  return `<row r="${number}"${attributes}>${inner.join("")}</row>`;
}
