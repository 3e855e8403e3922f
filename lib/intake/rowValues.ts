import type { Values } from "@/lib/intake/checkRow";
import type { Firmware } from "@/lib/intake/readFirmware";
import type { PartNumber } from "@/lib/intake/readPartNumber";

/** The text, code, choice, date or time of a field; null when not known. */
export function textValue(values: Values, key: string): string | null {
  const value = values[key];
  return typeof value === "string" ? value : null;
}

/** The number of a field; null when not known. */
export function numberValue(values: Values, key: string): number | null {
  const value = values[key];
  return typeof value === "number" ? value : null;
}

/** The yes or no of a field; null when not known. */
export function booleanValue(values: Values, key: string): boolean | null {
  const value = values[key];
  return typeof value === "boolean" ? value : null;
}

/** The part number of a field; null when not known. */
export function partValue(values: Values, key: string): PartNumber | null {
  const value = values[key];
  return typeof value === "object" && value !== null && "key" in value ? value : null;
}

/** The firmware of a field; null when not known. */
export function firmwareValue(values: Values, key: string): Firmware | null {
  const value = values[key];
  return typeof value === "object" && value !== null && "level" in value ? value : null;
}

/** Whether a row of the axis survey is an axis; otherwise it is one other item of the machine. */
export function isAxisRow(values: Values): boolean {
  return textValue(values, "axisCode") !== null;
}
