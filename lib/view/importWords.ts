import type { FieldKind } from "@/lib/intake/field";
import type { FieldValue } from "@/lib/intake/readCell";
import { NOT_KNOWN, plainNumber } from "@/lib/view/number";
import { day } from "@/lib/view/time";

const THINGS: Readonly<Record<string, readonly [string, string]>> = {
  CurrencyRate: ["currency rate", "currency rates"],
  Site: ["site", "sites"],
  Line: ["line", "lines"],
  Controller: ["controller", "controllers"],
  Machine: ["machine", "machines"],
  Panel: ["panel", "panels"],
  Network: ["motion network", "motion networks"],
  Axis: ["axis", "axes"],
  Family: ["product family", "product families"],
  Part: ["part", "parts"],
  PartAlias: ["other part number", "other part numbers"],
  Successor: ["successor", "successors"],
  LifecycleFact: ["statement on supply", "statements on supply"],
  Position: ["position", "positions"],
  Unit: ["unit", "units"],
  Placement: ["unit in its place", "units in their places"],
  StockLot: ["stock lot", "stock lots"],
  Event: ["event", "events"],
  Backup: ["copy of a controller", "copies of controllers"],
  Contact: ["number to call", "numbers to call"],
  ShutdownWindow: ["shutdown window", "shutdown windows"],
  Sighting: ["sighting", "sightings"],
};

/** What a stored thing is called on screen: `axis`, `stock lot`. */
export function thingWord(entity: string, many: boolean): string {
  const words = THINGS[entity];
  return words ? words[many ? 1 : 0] : entity;
}

/** A stored field in words: `costPerHour` reads `cost per hour`, `partId` reads `part`. */
export function storedFieldWord(field: string): string {
  return field
    .replace(/Id$/, "")
    .replace(/([a-z])([A-Z0-9])/g, "$1 $2")
    .toLowerCase();
}

const WHOLE_DAY = /^\d{4}-\d{2}-\d{2}$/;
const LOCAL_TIME = /^(\d{4}-\d{2}-\d{2})T(\d{2}:\d{2})$/;

/** A value of a stored field in words; a year is no quantity and has no groups of digits. */
export function storedWord(field: string, value: string | number | boolean | null): string {
  return field.endsWith("Year") && value !== null ? String(value) : valueWord(value);
}

/** A value as read or stored, in words: dates that cannot be misread, `not known` for nothing. */
export function valueWord(value: string | number | boolean | null): string {
  if (value === null || value === "") return NOT_KNOWN;
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (typeof value === "number") return plainNumber(value, decimalsOf(value));
  if (WHOLE_DAY.test(value)) return day(value);
  const time = LOCAL_TIME.exec(value);
  return time ? `${day(time[1] ?? null)}, ${time[2]}` : value;
}

/** A cell as it was read; empty text for nothing, since a sparse row would be a wall of words. */
export function cellWord(value: FieldValue | undefined, kind: FieldKind): string {
  if (value === undefined || value === null) return "";
  if (typeof value !== "object") return kind === "year" ? String(value) : valueWord(value);
  if ("level" in value)
    return `${value.bound === "atLeast" ? "at least " : ""}${value.level}${value.minor === null ? "" : `.${value.minor}`}`;
  return value.revision === null ? value.base : `${value.base} rev. ${value.revision}`;
}

function decimalsOf(value: number): number {
  const text = String(value);
  if (text.includes("e")) return Number.isInteger(value) ? 0 : 6;
  return Math.min(6, text.split(".")[1]?.length ?? 0);
}

const STATES = { staged: "waiting", committed: "loaded", undone: "taken back" } as const;

/** What became of a file, in words. */
export function stateWord(state: keyof typeof STATES): string {
  return STATES[state];
}

/** What parts columns, in words. */
export const SEPARATOR_WORDS: Readonly<Record<string, string>> = {
  ";": "semicolon",
  ",": "comma",
  "\t": "tab",
  "|": "upright stroke",
};

/** Ways of writing letters, in words. */
export const ENCODING_WORDS: Readonly<Record<string, string>> = {
  "utf-8": "UTF-8",
  "utf-16le": "UTF-16 (little-endian)",
  "utf-16be": "UTF-16 (big-endian)",
  "windows-1250": "Windows-1250 (Central European)",
  "windows-1252": "Windows-1252 (Western European)",
};
