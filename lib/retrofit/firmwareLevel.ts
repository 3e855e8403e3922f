/**
 * A firmware level as somebody wrote it.
 *
 * `parts` are the dotted numbers as written, so 20.011 and 20.11 stay apart; only the zeros before the first are
 * dropped. `patch` is a word and number behind them, e.g. SP 2. `atLeast` gives only the lowest level it can be.
 */
export type FirmwareLevel =
  | {
      readonly state: "exact" | "atLeast";
      readonly parts: readonly string[];
      readonly patch: { readonly word: string; readonly number: number } | null;
      /** What was written, letter for letter. */
      readonly raw: string;
    }
  | { readonly state: "unknown"; readonly raw: string | null };

type KnownLevel = Exclude<FirmwareLevel, { state: "unknown" }>;

/** What two levels are to each other; undecidable when the writing leaves both ways open. */
export type LevelOrder = "before" | "same" | "after" | "undecidable";

const LEVEL =
  /^(?:firmware|fw|version|ver\.?|v\.?|rev\.?|r)?\s*\.?\s*(\d{1,3}(?:[.,]\d{1,6})*)(?:\s*(sp|hf|patch|build)\s*(\d{1,6}))?$/i;
const FLOOR = /^(?:≥|>=|=>|min\.?|at least|mind\.?|od|minst|mín\.?)\s*(.+)$/i;
const FLOOR_AFTER = /^(.+?)\s*(?:\+|or higher|oder höher|lub wyższa|eller högre|o superior)$/i;

/**
 * Reads a firmware level: `20`, `v20`, `20.011`, `20.11 SP 2`, `>=20`.
 *
 * What names no number (`latest`) or leaves a choice (`20/21`, `<24`) is unknown and keeps its text.
 *
 * @param raw Text as read; null is nothing read.
 */
export function parseFirmwareLevel(raw: string | null): FirmwareLevel {
  const text = raw?.trim() ?? "";
  const exact = readLevel(text);
  if (raw !== null && exact) return { state: "exact", ...exact, raw };
  const floorText = FLOOR.exec(text)?.[1] ?? FLOOR_AFTER.exec(text)?.[1];
  const floor = floorText === undefined ? null : readLevel(floorText.trim());
  return raw !== null && floor ? { state: "atLeast", ...floor, raw } : { state: "unknown", raw };
}

function readLevel(text: string): Pick<KnownLevel, "parts" | "patch"> | null {
  const [, dotted, word, number] = LEVEL.exec(text) ?? [];
  if (dotted === undefined) return null;
  const [first = "", ...rest] = dotted.split(/[.,]/);
  const patch = word === undefined ? null : { word: word.toLowerCase(), number: Number(number) };
  return { parts: [String(Number(first)), ...rest], patch };
}

/**
 * Says which of two levels comes first.
 *
 * Dotted parts are compared one by one as numbers; of two writings of the same number the one with more leading
 * zeros comes first: read as digits after a point it is smaller, read as a counter it is equal, and no reading
 * puts it later (own choice, no source). Where one level names fewer parts, or only one names a patch, and all
 * before it agrees, the order is undecidable; so it is between patches of different words, and against a level
 * known only from below unless the other lies below that.
 *
 * On the decidable pairs this is antisymmetric and transitive.
 */
export function compareFirmware(a: FirmwareLevel, b: FirmwareLevel): LevelOrder {
  if (a.state === "unknown" || b.state === "unknown") return "undecidable";
  const order = compareWritten(a, b);
  if (a.state === "exact" && b.state === "exact") return order;
  const open = {
    before: b.state === "atLeast" && a.state === "exact",
    after: a.state === "atLeast" && b.state === "exact",
  };
  return (order === "before" || order === "after") && open[order] ? order : "undecidable";
}

function compareWritten(a: KnownLevel, b: KnownLevel): LevelOrder {
  const shared = Math.min(a.parts.length, b.parts.length);
  for (let i = 0; i < shared; i += 1) {
    const order = comparePart(a.parts[i] ?? "", b.parts[i] ?? "");
    if (order !== "same") return order;
  }
  return a.parts.length === b.parts.length ? comparePatch(a.patch, b.patch) : "undecidable";
}

function comparePart(a: string, b: string): LevelOrder {
  return orderOf(Number(a), Number(b)) ?? orderOf(b.length, a.length) ?? "same";
}

function comparePatch(a: KnownLevel["patch"], b: KnownLevel["patch"]): LevelOrder {
  if (a?.word !== b?.word) return "undecidable";
  return orderOf(a?.number ?? 0, b?.number ?? 0) ?? "same";
}

function orderOf(a: number, b: number): "before" | "after" | null {
  return a === b ? null : a < b ? "before" : "after";
}

/**
 * Says whether a level meets a lowest level.
 *
 * The lowest level holds for all that is finer than it names: 24.011 and 24 SP 2 meet 24. A level that is not
 * known, or known from below only, never fails and meets only what lies below it for sure.
 *
 * @param floor Lowest level, written exactly; anything else leaves the answer undecidable.
 */
export function meetsLevel(level: FirmwareLevel, floor: FirmwareLevel): "yes" | "no" | "undecidable" {
  if (level.state === "unknown" || floor.state !== "exact") return "undecidable";
  const parts = level.parts.slice(0, floor.parts.length);
  const finer = parts.length < level.parts.length || floor.patch === null;
  const seen: KnownLevel = { ...level, state: "exact", parts, patch: finer ? null : level.patch };
  const order = compareWritten(seen, floor);
  if (order === "same" || order === "after") return "yes";
  return order === "before" && level.state === "exact" ? "no" : "undecidable";
}

/** The level in a few characters: what was read, or that nothing certain was. */
export function firmwareWord(level: FirmwareLevel): string {
  if (level.state === "unknown") return level.raw === null ? "not read" : `not known (“${level.raw}”)`;
  return level.raw;
}
