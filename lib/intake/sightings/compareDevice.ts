import { lookAlikeKey, partKey } from "@/lib/intake/readPartNumber";
import type { RegisterItem, SeenDevice } from "@/lib/intake/sightings/device";
import { compareFirmware, parseFirmwareLevel } from "@/lib/retrofit/firmwareLevel";

export type SightField = "number" | "revision" | "serial" | "firmware";

/** One thing both sides may say of a device. */
export interface SightDifference {
  readonly field: SightField;
  /** Null is not on record. */
  readonly register: string | null;
  readonly seen: string;
  /** `adds`: the register does not know it · `differs`: it says otherwise. */
  readonly verdict: "adds" | "differs";
  /** Only letters that look like digits differ. */
  readonly lookAlike: boolean;
}

type Said = Pick<SightDifference, "field" | "register" | "seen">;

const adds = (said: Said): SightDifference => ({ ...said, verdict: "adds", lookAlike: false });
const differs = (said: Said): SightDifference => ({
  ...said,
  verdict: "differs",
  lookAlike:
    said.register !== null && lookAlikeKey(partKey(said.register)) === lookAlikeKey(partKey(said.seen)),
});

function compareKeys(said: Said, known: readonly string[]): SightDifference[] {
  if (said.register === null) return [adds(said)];
  return known.some((one) => partKey(one) === partKey(said.seen)) ? [] : [differs(said)];
}

function compareNumbers(item: RegisterItem, { number, revision }: SeenDevice): SightDifference[] {
  if (number === "") return [];
  const register = item.number;
  const whole = revision === "" ? number : `${number}-${revision}`;
  const known = register === null ? [] : [register, `${register}${item.revision ?? ""}`, ...item.aliases];
  if (known.some((one) => partKey(one) === partKey(whole))) return [];
  const base = compareKeys({ field: "number", register, seen: number }, known);
  if (base.length > 0 || revision === "" || item.kind === "controller") return base;
  return compareKeys(
    { field: "revision", register: item.revision, seen: revision },
    item.revision === null ? [] : [item.revision],
  );
}

function compareLevels(item: RegisterItem, { firmware }: SeenDevice): SightDifference[] {
  if (firmware === "" || item.kind !== "controller") return [];
  const seen = parseFirmwareLevel(firmware);
  if (seen.state === "unknown") return [];
  const said: Said = { field: "firmware", register: item.firmware, seen: firmware };
  const known = parseFirmwareLevel(item.firmware);
  if (known.state === "unknown") return [adds(said)];
  const order = compareFirmware(known, seen);
  if (order === "same") return [];
  // 20 on record and 20.011 seen say the same as far as the register goes.
  const agrees = known.parts.every((part, i) => part === seen.parts[i]);
  return order === "undecidable" && agrees ? [adds(said)] : [differs(said)];
}

/** Where a device and the item it is taken for do not say the same; what the list leaves empty says nothing. */
export function compareDevice(item: RegisterItem, device: SeenDevice): SightDifference[] {
  const { serial } = device;
  const serials =
    serial === "" || item.kind === "controller"
      ? []
      : compareKeys(
          { field: "serial", register: item.serial, seen: serial },
          item.serial === null ? [] : [item.serial],
        );
  return [...compareNumbers(item, device), ...serials, ...compareLevels(item, device)];
}
