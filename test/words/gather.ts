import { readFileSync } from "node:fs";
import { join } from "node:path";
import { listFiles, readModules } from "@/test/architecture/sources";
import { walk } from "@/test/architecture/walk";
import { collectTexts } from "./collect";

/** Folders whose texts are read by whoever runs the server, in a terminal or a log. */
const FOR_THE_OPERATOR = /^lib\/(launch|metrics|words|env\.ts)/;

const CATALOGUE = "lib/words/de";

/** Single words such as `failure` stand in the code as names as often as for a person to read. */
const SINGLE_WORDS = `${CATALOGUE}/words.json`;

/** Forms a text takes once it is put together, which no file holds as one. */
const FORMS = `${CATALOGUE}/forms.json`;

const root = join(import.meta.dirname, "../..");

const modules = readModules("app", "lib").filter(({ path }) => !FOR_THE_OPERATOR.test(path));

/** Every text a person may read, with the first file it stands in. */
export function textsInCode(): Map<string, string> {
  const found = new Map<string, string>();
  for (const { text, path } of modules.flatMap(collectTexts)) if (!found.has(text)) found.set(text, path);
  return found;
}

/** Every text written in the code at all, words and names alike. */
function literals(): Set<string> {
  const found = new Set<string>();
  for (const { body } of modules)
    walk(body, ({ value }) => {
      if (typeof value === "string") found.add(value);
    });
  return found;
}

export interface Entry {
  readonly file: string;
  readonly english: string;
  readonly other: string;
}

/** The catalogue as it is written, file by file. */
export function entries(): Entry[] {
  return listFiles(CATALOGUE).flatMap((file) => {
    const texts: Record<string, string> = JSON.parse(readFileSync(join(root, file), "utf8"));
    return Object.entries(texts).map(([english, other]) => ({ file, english, other }));
  });
}

/** Texts without an entry, each with the file it stands in. */
export function missing(): string[] {
  const known = new Set(entries().map(({ english }) => english));
  return [...textsInCode()].filter(([text]) => !known.has(text)).map(([text, path]) => `${path}: ${text}`);
}

/** Entries whose English nothing says any more. */
export function dead(): string[] {
  const texts = textsInCode();
  const words = literals();
  const isUsed = ({ file, english }: Entry) =>
    file === FORMS || (file === SINGLE_WORDS ? words.has(english) : texts.has(english));
  return entries()
    .filter((entry) => !isUsed(entry))
    .map(({ file, english }) => `${file}: ${english}`);
}
