import { Parser } from "saxen";
import { UnreadableFile } from "@/lib/intake/limits";

/** What is told of a part's XML, in order; names come without their namespace's prefix. */
export interface XmlListener {
  open?(name: string, attribute: (name: string) => string | null): void;
  text?(text: string): void;
  close?(name: string): void;
}

const PIECE_LETTERS = 131_072;
const LONGEST_TOKEN = 1_000_000;
const DEEPEST = 64;

const NAMED: Readonly<Record<string, string>> = { amp: "&", lt: "<", gt: ">", quot: '"', apos: "'" };

/** What stands between & and ; as a letter; as written when it is none. */
function letterOf(written: string): string {
  const name = written.slice(1, -1);
  if (!name.startsWith("#")) return NAMED[name] ?? written;
  const code = /^#x/i.test(name) ? Number.parseInt(name.slice(2), 16) : Number(name.slice(1));
  const isLetter = code > 0 && code <= 0x10_ff_ff && (code < 0xd8_00 || code > 0xdf_ff);
  return isLetter ? String.fromCodePoint(code) : written;
}

/** Character references and the five named entities; no other entity exists where none can be declared. */
function decode(text: string): string {
  return text.includes("&") ? text.replace(/&(?:#\d{1,7}|#x[\da-f]{1,6}|\w{2,4});/gi, letterOf) : text;
}

const localName = (name: string) => name.slice(name.indexOf(":") + 1);

function attributesOf(read: () => Readonly<Record<string, string>>): (name: string) => string | null {
  let found: Map<string, string> | undefined;
  return (name) => {
    found ??= new Map(Object.entries(read()).map(([key, value]) => [localName(key), value]));
    const value = found.get(name);
    return value === undefined ? null : decode(value);
  };
}

function makeParser(listener: XmlListener, seen: () => void): Parser {
  let depth = 0;
  const tell = (text: string) => {
    seen();
    listener.text?.(text);
  };
  return new Parser()
    .on("openTag", (name, attributes) => {
      seen();
      depth += 1;
      if (depth > DEEPEST) throw new UnreadableFile(`it is nested more than ${DEEPEST} deep`);
      listener.open?.(localName(name), attributesOf(attributes));
    })
    .on("text", (text) => tell(decode(text)))
    .on("cdata", tell)
    .on("closeTag", (name) => {
      seen();
      depth -= 1;
      listener.close?.(localName(name));
    })
    .on("attention", () => {
      // Entities that unfold into gigabytes or name other files need such a declaration; a workbook has none.
      throw new UnreadableFile("it declares entities of its own");
    });
}

function textDecoderOf(first: Uint8Array) {
  if (first[0] === 0xff && first[1] === 0xfe) return new TextDecoder("utf-16le");
  return new TextDecoder(first[0] === 0xfe && first[1] === 0xff ? "utf-16be" : "utf-8");
}

function* textOf(pieces: Iterable<Uint8Array>): Generator<string> {
  let decoder: ReturnType<typeof textDecoderOf> | undefined;
  for (const piece of pieces) {
    decoder ??= textDecoderOf(piece);
    const text = decoder.decode(piece, { stream: true });
    for (let at = 0; at < text.length; at += PIECE_LETTERS) yield text.slice(at, at + PIECE_LETTERS);
  }
}

/**
 * Reads XML as it comes, without holding it: no declarations of entities, no nesting without end, no single
 * text or tag beyond a million letters.
 *
 * @throws UnreadableFile with the reason as half a sentence, or whatever the listener throws.
 */
export function readXml(pieces: Iterable<Uint8Array>, listener: XmlListener): void {
  let sinceSeen = 0;
  const parser = makeParser(listener, () => {
    sinceSeen = 0;
  });
  for (const text of textOf(pieces)) {
    sinceSeen += text.length;
    parser.write(text);
    if (sinceSeen > LONGEST_TOKEN) throw new UnreadableFile("one text in it never ends");
  }
  parser.end();
}
