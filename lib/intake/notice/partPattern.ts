import { foldText } from "@/lib/intake/foldText";
import { partKey, readPartNumber } from "@/lib/intake/readPartNumber";
import { err, ok, type Result } from "@/lib/kernel/result";

/** A part as patterns are held against it. */
export interface NamedPart {
  readonly id: string;
  readonly number: string;
  readonly family: string | null;
  readonly aliases: readonly string[];
}

/** One entry of a list of parts: takes parts in, or with `!` out. */
export interface PartPattern {
  readonly written: string;
  readonly out: boolean;
  readonly covers: (part: NamedPart) => boolean;
}

const SEPARATOR = /[\n,;]+/;
const RANGE = /^(.+?)\s*\.\.\s*(.+)$/;
const LAST_DIGITS = /^(.*?)(\d+)$/;

/** Keys of a part: its number and what else it is called. */
const keysOf = ({ number, aliases }: NamedPart) => [number, ...aliases].map(partKey);

/** Keys a number may stand under: as a whole, and without its hardware revision. */
export function spellings(text: string): string[] {
  const read = readPartNumber(text);
  return read.state === "value" ? [read.value.fullKey, read.value.key] : [partKey(text)];
}

/** `*` any letters and digits, also none; `?` exactly one; case and separators do not count. */
function wildcard(text: string): RegExp {
  const pieces = text.split(/([*?])/).map((piece) => {
    if (piece === "*") return "[\\p{L}\\p{N}]*";
    return piece === "?" ? "[\\p{L}\\p{N}]" : partKey(piece);
  });
  return new RegExp(`^${pieces.join("")}$`, "u");
}

/** From one number to another that differs in its last digits alone; the second may be those digits alone. */
function range(from: string, to: string): Result<(key: string) => boolean, string> {
  const [, start, first = ""] = LAST_DIGITS.exec(partKey(from)) ?? [];
  const end = /^\d+$/.test(to.trim()) ? `${start}${to.trim()}` : partKey(to);
  const [, sameStart, last = ""] = LAST_DIGITS.exec(end) ?? [];
  if (start === undefined || sameStart !== start || Number(first) > Number(last))
    return err(
      `${from}..${to} is no range: both ends must differ in their last digits alone, the lower first`,
    );
  return ok((key) => {
    const [, own, digits = ""] = LAST_DIGITS.exec(key) ?? [];
    return own === start && Number(digits) >= Number(first) && Number(digits) <= Number(last);
  });
}

function covering(text: string): Result<PartPattern["covers"], string> {
  if (partKey(text) === "" && !text.includes("*")) return err(`${text} names no part`);
  const [, from, to] = RANGE.exec(text) ?? [];
  if (from !== undefined && to !== undefined) {
    const inside = range(from, to);
    return inside.ok ? ok((part) => inside.value(partKey(part.number))) : inside;
  }
  if (/[*?]/.test(text)) {
    if (text.replace(/[*?\s]/g, "") === "") return err(`${text} would take every part: name a start`);
    const shape = wildcard(text);
    return ok((part) => keysOf(part).some((key) => shape.test(key)));
  }
  const [keys, name] = [spellings(text), foldText(text)];
  return ok(
    (part) =>
      keysOf(part).some((key) => keys.includes(key)) ||
      (part.family !== null && foldText(part.family) === name),
  );
}

/**
 * Reads a list of parts: entries parted by line, comma or semicolon.
 *
 * An entry is a number in any spelling, a family's name, a number with `*` (any run, also none) or `?` (one letter
 * or digit), a range `TM-HR-010..040`, or any of these after `!`, which takes its parts out again.
 *
 * @returns The entries, or what is wrong with the first that cannot be used.
 */
export function readPatterns(text: string): Result<PartPattern[], string> {
  const found: PartPattern[] = [];
  for (const entry of text.split(SEPARATOR)) {
    const written = entry.trim();
    if (written === "") continue;
    const out = written.startsWith("!");
    const covers = covering(out ? written.slice(1).trim() : written);
    if (!covers.ok) return covers;
    found.push({ written, out, covers: covers.value });
  }
  return ok(found);
}

/** What a list takes of the known parts, and the entries that take none. */
export interface Matched {
  readonly parts: readonly NamedPart[];
  readonly empty: readonly string[];
}

/** The parts at least one entry takes in and none takes out; in the order given. */
export function matchParts(patterns: readonly PartPattern[], parts: readonly NamedPart[]): Matched {
  const [outs, ins] = [patterns.filter(({ out }) => out), patterns.filter(({ out }) => !out)];
  return {
    parts: parts.filter(
      (part) => ins.some(({ covers }) => covers(part)) && !outs.some(({ covers }) => covers(part)),
    ),
    empty: patterns.filter(({ covers }) => !parts.some(covers)).map(({ written }) => written),
  };
}

/**
 * The number that stands to a successor pattern as a part stands to its own: `TM-HR-*` to `TM-HE-*` leads from
 * TM-HR-020 to TM-HE-020. A successor without `*` is the same for every part.
 *
 * @returns The key of the successor; null when the part does not fit the patterns.
 */
export function successorKey(
  number: string,
  patterns: readonly PartPattern[],
  successor: string,
): string | null {
  const at = successor.indexOf("*");
  if (at < 0) return partKey(successor);
  for (const { written, out } of patterns) {
    const [, start, tail] = /^([^*?]*)\*([^*?]*)$/.exec(written) ?? [];
    if (out || start === undefined || tail === undefined) continue;
    const [own, head, foot] = [partKey(number), partKey(start), partKey(tail)];
    if (own.length < head.length + foot.length || !own.startsWith(head) || !own.endsWith(foot)) continue;
    const middle = own.slice(head.length, own.length - foot.length);
    return partKey(successor.slice(0, at)) + middle + partKey(successor.slice(at + 1));
  }
  return null;
}
