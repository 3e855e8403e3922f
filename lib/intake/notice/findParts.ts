import { foldText } from "@/lib/intake/foldText";
import { matchParts, type NamedPart, readPatterns, spellings } from "@/lib/intake/notice/partPattern";
import { partKey } from "@/lib/intake/readPartNumber";

/** Entries of a list of parts as found in a text. */
export interface FoundParts {
  /** Ready for `readPatterns`. */
  readonly patterns: readonly string[];
  /** What looks like a part number and is none on record. */
  readonly unknown: readonly string[];
}

const NUMBER = "[\\p{L}\\p{N}][\\p{L}\\p{N}._-]*\\p{N}";
const RANGE = new RegExp(
  `(${NUMBER})\\s*(?:\\.\\.|–|—|\\bto\\b|\\bthrough\\b|\\bbis\\b)\\s*(${NUMBER})`,
  "giu",
);
const BETWEEN = /[\s,;:()[\]{}"'|<>]+/u;
const MOST_WORDS = 4;
const SHORTEST_KEY = 4;
const MOST_UNKNOWN = 20;

/** A token with placeholders: `TM-HR-*`, `TM-HR-0?0`, `TM-HR-0xx`. */
function wildcardOf(token: string): string | null {
  const bare = token.replace(/[.!]+$/, "");
  const marked = /[-_](?:\p{N}*)x{2,}$/iu.test(bare)
    ? bare.replace(/x+$/iu, (run) => "?".repeat(run.length))
    : bare;
  if (!/[*?]/.test(marked) || !/^[\p{L}\p{N}]/u.test(marked)) return null;
  // A word before a question mark is a question.
  if (!/[-_\p{N}]/u.test(marked)) return null;
  return partKey(marked).length >= 2 ? marked : null;
}

function ranges(text: string, parts: readonly NamedPart[]): string[] {
  return [...text.matchAll(RANGE)].flatMap(([, from = "", to = ""]) => {
    const written = `${from}..${to}`;
    const read = readPatterns(written);
    return read.ok && matchParts(read.value, parts).parts.length > 0 ? [written] : [];
  });
}

/** Numbers on record in a line, in any spelling, also over several words. */
function numbersIn(tokens: readonly string[], byKey: ReadonlyMap<string, NamedPart>): string[] {
  const found: string[] = [];
  for (let from = 0; from < tokens.length; ) {
    const words = Math.min(MOST_WORDS, tokens.length - from);
    const windows = Array.from({ length: words }, (_, i) => words - i);
    const hit = windows.flatMap((size) => {
      const written = tokens.slice(from, from + size).join(" ");
      const key = spellings(written).find((one) => one.length >= SHORTEST_KEY && byKey.has(one));
      const part = key === undefined ? undefined : byKey.get(key);
      return part ? [{ size, part }] : [];
    })[0];
    if (hit) found.push(hit.part.number);
    from += hit?.size ?? 1;
  }
  return found;
}

function keyed(parts: readonly NamedPart[]): Map<string, NamedPart> {
  const entries = parts.flatMap((part) =>
    [part.number, ...part.aliases].map((spelling) => [partKey(spelling), part] as const),
  );
  return new Map(entries.filter(([key]) => /\d/.test(key)));
}

function familiesIn(text: string, parts: readonly NamedPart[]): string[] {
  const folded = ` ${foldText(text)} `;
  const names = [...new Set(parts.flatMap(({ family }) => family ?? []))];
  return names.filter((name) => folded.includes(` ${foldText(name)} `));
}

const looksLikeNumber = (token: string) =>
  /^\p{L}[\p{L}\p{N}]*(?:[-_.][\p{L}\p{N}]+)+$/u.test(token) &&
  /\p{N}/u.test(token) &&
  partKey(token).length >= 6;

/**
 * The parts a text speaks of: ranges and wildcards first, then numbers on record in any spelling, then whole
 * families where nothing narrower was found. What a wider entry covers already is not said again.
 */
export function findParts(text: string, parts: readonly NamedPart[]): FoundParts {
  const byKey = keyed(parts);
  const lines = text.split("\n").map((line) => line.split(BETWEEN).filter((token) => token !== ""));
  const tokens = lines.flat();
  const wide = [...new Set([...ranges(text, parts), ...tokens.flatMap((token) => wildcardOf(token) ?? [])])];
  const wideRead = readPatterns(wide.join("\n"));
  const covered = new Set(
    wideRead.ok ? matchParts(wideRead.value, parts).parts.map(({ number }) => number) : [],
  );
  const single = [...new Set(lines.flatMap((line) => numbersIn(line, byKey)))].filter(
    (one) => !covered.has(one),
  );
  const found = [...wide, ...single];
  const unknown = [...new Set(tokens.filter(looksLikeNumber))].filter(
    (token) => !spellings(token).some((key) => byKey.has(key)),
  );
  return {
    patterns: found.length > 0 ? found : familiesIn(text, parts),
    unknown: unknown.slice(0, MOST_UNKNOWN),
  };
}
