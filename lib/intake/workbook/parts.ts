import { UnreadableFile } from "@/lib/intake/limits";
import { type Archive, openArchive } from "@/lib/intake/workbook/archive";
import { type CellFormat, readCellFormats } from "@/lib/intake/workbook/cellFormats";
import { readXml, type XmlListener } from "@/lib/intake/workbook/readXml";

/** A sheet of a workbook, not read yet. */
export interface SheetPart {
  readonly name: string;
  readonly hidden: boolean;
  readonly part: string;
}

/** What the sheets of a workbook share. */
export interface Workbook {
  readonly archive: Archive;
  readonly sheets: readonly SheetPart[];
  readonly from1904: boolean;
  readonly strings: readonly string[];
  readonly formats: readonly CellFormat[];
}

type Relation = { readonly kind: string; readonly part: string };

const RESAVE = "Open it in a spreadsheet program, save it as .xlsx and load that file";

/** Reads one part; what is wrong with its XML is said with the part's name. */
export function readPart(archive: Archive, part: string, listener: XmlListener): boolean {
  const pieces = archive.unpack(part);
  if (pieces === null) return false;
  try {
    readXml(pieces, listener);
    return true;
  } catch (error) {
    // A sentence that ends in a cure is whole already; the parser's own words are half of one.
    if (error instanceof UnreadableFile && error.message.includes(". ")) throw error;
    const reason = error instanceof Error ? error.message : "it is no XML";
    throw new UnreadableFile(`The workbook's part ${part} cannot be read: ${reason}. ${RESAVE}`);
  }
}

function resolve(from: string, target: string): string {
  if (target.startsWith("/")) return target.slice(1);
  const steps = from.split("/").slice(0, -1);
  for (const step of target.split("/")) {
    if (step === "..") steps.pop();
    else if (step !== ".") steps.push(step);
  }
  return steps.join("/");
}

/** What a part refers to, by the number it gives each; targets outside the file are left out. */
export function readRelations(archive: Archive, part: string): Map<string, Relation> {
  const [, folder = "", file = ""] = /^(.*\/)?([^/]*)$/.exec(part) ?? [];
  const relations = new Map<string, Relation>();
  readPart(archive, `${folder}_rels/${file}.rels`, {
    open: (name, attribute) => {
      if (name !== "Relationship" || attribute("TargetMode") === "External") return;
      const kind = (attribute("Type") ?? "").split("/").at(-1) ?? "";
      relations.set(attribute("Id") ?? "", { kind, part: resolve(part, attribute("Target") ?? "") });
    },
  });
  return relations;
}

const partOf = (relations: ReadonlyMap<string, Relation>, kind: string) =>
  [...relations.values()].find((one) => one.kind === kind)?.part;

function refuseOther({ names }: Archive): UnreadableFile {
  if (names.some((name) => name.endsWith("workbook.bin")))
    return new UnreadableFile(`This is a workbook of the binary kind (.xlsb). ${RESAVE}`);
  if (names.includes("content.xml"))
    return new UnreadableFile(`This is a document of another office format (.ods). ${RESAVE}`);
  return new UnreadableFile(
    "This is an archive (.zip) without a workbook in it. Unpack it and load the files in it one by one",
  );
}

/** Shared texts; what a phonetic guide says beside them is left out. */
function readStrings(archive: Archive, part: string): string[] {
  const strings: string[] = [];
  let text = "";
  let isText = false;
  let isGuide = false;
  readPart(archive, part, {
    open: (name) => {
      if (name === "si") text = "";
      else if (name === "rPh") isGuide = true;
      else if (name === "t") isText = !isGuide;
    },
    text: (more) => {
      if (isText) text += more;
    },
    close: (name) => {
      if (name === "t") isText = false;
      else if (name === "rPh") isGuide = false;
      else if (name === "si") strings.push(unescapeLetters(text));
    },
  });
  return strings;
}

/** Letters XML cannot hold are written as _x000D_ in a workbook; other line ends become one kind. */
export function unescapeLetters(text: string): string {
  if (!text.includes("_x")) return text;
  return text
    .replace(/_x([\dA-F]{4})_/gi, (_, code) => String.fromCharCode(Number.parseInt(code, 16)))
    .replaceAll("\r\n", "\n")
    .replace(/\p{Surrogate}/gu, "\uFFFD");
}

/**
 * Opens a workbook: its sheets, its texts and how its cells are shown. The sheets themselves are not unpacked.
 *
 * @throws UnreadableFile
 */
export function openWorkbook(bytes: Uint8Array): Workbook {
  const archive = openArchive(bytes);
  const main = partOf(readRelations(archive, ""), "officeDocument") ?? "xl/workbook.xml";
  if (!archive.names.includes(main) || main.endsWith(".bin")) throw refuseOther(archive);
  const relations = readRelations(archive, main);
  const sheets: SheetPart[] = [];
  let from1904 = false;
  readPart(archive, main, {
    open: (name, attribute) => {
      if (name === "workbookPr") from1904 = /^(?:1|true)$/.test(attribute("date1904") ?? "");
      if (name !== "sheet") return;
      const relation = relations.get(attribute("id") ?? "");
      if (relation?.kind !== "worksheet") return;
      const hidden = (attribute("state") ?? "visible") !== "visible";
      sheets.push({ name: attribute("name") ?? "", hidden, part: relation.part });
    },
  });
  if (sheets.length === 0) throw new UnreadableFile(`The workbook has no sheet with rows. ${RESAVE}`);
  const strings = partOf(relations, "sharedStrings");
  const styles = archive.unpack(partOf(relations, "styles") ?? "");
  return {
    archive,
    sheets,
    from1904,
    strings: strings === undefined ? [] : readStrings(archive, strings),
    formats: styles === null ? [] : readCellFormats(styles),
  };
}
