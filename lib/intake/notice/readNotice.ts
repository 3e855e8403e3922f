import { findDates } from "@/lib/intake/notice/findDates";
import { findParts } from "@/lib/intake/notice/findParts";
import type { FoundDate } from "@/lib/intake/notice/noticeDate";
import type { NamedPart } from "@/lib/intake/notice/partPattern";

/** A part on record with its maker. */
export interface MadePart extends NamedPart {
  readonly maker: string;
}

/** What a notice's text seems to say; a person confirms or corrects each of it. */
export interface NoticeProposal {
  readonly document: string;
  readonly maker: string;
  readonly patterns: readonly string[];
  readonly unknown: readonly string[];
  readonly successor: string;
  readonly dates: readonly FoundDate[];
}

const SUCCESSOR =
  /\b(?:successors?|replaced by|replacements?|superseded by|use instead|Nachfolger\w*|ersetzt durch)\b[^\n.;]*/giu;
const DOCUMENT =
  /\b(?:bulletin|notice|document|letter|circular|Mitteilung|Abkündigung)\b[ \t]*(?:no\.?|number|nr\.?|ref\.?)?[ \t]*[:#]?[ \t]*[\p{L}\p{N}./ -]{0,20}?\p{N}[\p{L}\p{N}./-]*/iu;
const LONGEST_NAME = 120;

/** The line of a document that looks most like its number, else its first. */
function documentOf(text: string): string {
  const first = text.split("\n").find((line) => line.trim() !== "") ?? "";
  return (DOCUMENT.exec(text)?.[0] ?? first).replace(/\s+/g, " ").trim().slice(0, LONGEST_NAME);
}

/** Many successors of one shape are one with `*`; other sets are left to the person. */
function oneSuccessor(found: readonly string[]): string {
  const [first, ...more] = found;
  if (first === undefined || more.length === 0) return first ?? "";
  const starts = new Set(found.map((number) => number.replace(/[^-_.]*$/u, "")));
  const [start] = starts;
  return starts.size === 1 && start ? `${start}*` : "";
}

function makerOf(text: string, named: readonly MadePart[], all: readonly MadePart[]): string {
  const own = new Set(named.map(({ maker }) => maker));
  const [only] = own;
  if (own.size === 1 && only !== undefined) return only;
  const makers = [...new Set(all.map(({ maker }) => maker))];
  const said = makers.filter((maker) => maker !== "" && text.toLowerCase().includes(maker.toLowerCase()));
  return said.length === 1 ? (said[0] ?? "") : "";
}

/** Reads a discontinuance notice as far as its words go; nothing found is an empty proposal, not a refusal. */
export function readNotice(text: string, parts: readonly MadePart[]): NoticeProposal {
  const plain = text.normalize("NFKC").replace(/\r\n?/g, "\n");
  const said = [...plain.matchAll(SUCCESSOR)].map(([words]) => words).join("\n");
  const rest = plain.replace(SUCCESSOR, " ");
  const { patterns, unknown } = findParts(rest, parts);
  const named = parts.filter(({ number }) => patterns.includes(number));
  return {
    ...{ document: documentOf(plain), maker: makerOf(plain, named, parts), patterns, unknown },
    successor: oneSuccessor(findParts(said, parts).patterns),
    dates: findDates(plain),
  };
}
