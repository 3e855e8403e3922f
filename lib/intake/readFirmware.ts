import { infer, missing, plainText, type RawCell, type Reading, read } from "@/lib/intake/reading";
import { parseFirmwareLevel } from "@/lib/retrofit/firmwareLevel";

/**
 * A firmware level as read from a plate or a screen. `minor` keeps its digits letter for letter: 20.011 and
 * 20.11 are different. `bound` says whether the level is the level or only its floor.
 */
export type Firmware = { level: number; minor: string | null; bound: "exact" | "atLeast"; raw: string };

/**
 * Reads a firmware level: "v20", "20.011", "FW 22", "≥20". What names no number ("latest") or leaves a choice
 * ("20/21", "<24") is not known.
 */
export function readFirmware(cell: RawCell): Reading<Firmware> {
  const raw = plainText(cell);
  const found = parseFirmwareLevel(raw);
  if (found.state === "unknown")
    return missing({
      problem: `“${raw}” does not tell the firmware level; it is kept as not known`,
      remedy: "Read the level off the controller and enter its number",
    });
  const [level, minor = null] = found.parts;
  const firmware: Firmware = { level: Number(level), minor, bound: found.state, raw };
  if (found.state === "exact") return read(firmware);
  return infer(firmware, {
    problem: `“${raw}” gives only the lowest level`,
    remedy: "Read the level off the controller",
  });
}
