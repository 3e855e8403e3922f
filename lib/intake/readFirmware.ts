import { infer, missing, plainText, type RawCell, type Reading, read } from "@/lib/intake/reading";

/**
 * A firmware level as read from a plate or a screen. `minor` keeps its digits letter for letter: 20.011 and
 * 20.11 are different. `bound` says whether the level is the level or only its floor.
 */
export type Firmware = { level: number; minor: string | null; bound: "exact" | "atLeast"; raw: string };

const LEVEL =
  /^(?:firmware|fw|version|ver\.?|v\.?|rev\.?|r)?\s*\.?\s*(\d{1,3})(?:[.,](\d{1,6})(?:[.,]\d+)*)?(?:\s*(?:sp|hf|patch|build)\s*\d+)?$/i;
const FLOOR = /^(?:≥|>=|=>|min\.?|at least|mind\.?|od|minst|mín\.?)\s*(.+)$/i;
const FLOOR_AFTER = /^(.+?)\s*(?:\+|or higher|oder höher|lub wyższa|eller högre|o superior)$/i;

function parseLevel(text: string): { level: number; minor: string | null } | null {
  const match = LEVEL.exec(text);
  if (!match?.[1]) return null;
  return { level: Number(match[1]), minor: match[2] ?? null };
}

/**
 * Reads a firmware level: "v20", "20.011", "FW 22", "≥20". What names no number ("latest") or leaves a choice
 * ("20/21", "<24") is not known.
 */
export function readFirmware(cell: RawCell): Reading<Firmware> {
  const raw = plainText(cell);
  const exact = parseLevel(raw);
  if (exact !== null) return read({ ...exact, bound: "exact", raw });
  const floorText = FLOOR.exec(raw)?.[1] ?? FLOOR_AFTER.exec(raw)?.[1];
  const floor = floorText === undefined ? null : parseLevel(floorText.trim());
  if (floor !== null) {
    return infer(
      { ...floor, bound: "atLeast", raw },
      { problem: `“${raw}” gives only the lowest level`, remedy: "Read the level off the controller" },
    );
  }
  return missing({
    problem: `“${raw}” does not tell the firmware level; it is kept as not known`,
    remedy: "Read the level off the controller and enter its number",
  });
}
