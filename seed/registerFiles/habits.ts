import type { Encoding } from "@/lib/intake/textEncoding";

export type Language = "de" | "pl" | "sv" | "en" | "es";

/** How the files of a site are written. */
export interface Habits {
  readonly language: Language;
  readonly format: "csv" | "workbook";
  readonly encoding: Encoding;
  /** Whether the file begins with a byte order mark. */
  readonly marked: boolean;
  readonly separator: ";" | ",";
  readonly decimalMark: "." | ",";
  readonly dateShape: "d.m.Y" | "Y-m-d" | "m/d/Y" | "d/m/Y";
  readonly clock: "24 h" | "12 h";
  /** Whether part numbers keep their dashes. */
  readonly dashes: boolean;
}

const USUAL = { format: "csv", marked: false, clock: "24 h", dashes: true } as const;

/** One company, six storerooms of habits. */
export const HABITS: Readonly<Record<string, Habits>> = {
  VEL: {
    ...USUAL,
    language: "de",
    encoding: "windows-1252",
    separator: ";",
    decimalMark: ",",
    dateShape: "d.m.Y",
  },
  OST: {
    ...USUAL,
    language: "pl",
    encoding: "windows-1250",
    separator: ";",
    decimalMark: ",",
    dateShape: "d.m.Y",
  },
  KAR: { ...USUAL, language: "sv", encoding: "utf-8", separator: ";", decimalMark: ",", dateShape: "Y-m-d" },
  PIN: {
    ...USUAL,
    language: "en",
    encoding: "utf-8",
    separator: ",",
    decimalMark: ".",
    dateShape: "m/d/Y",
    clock: "12 h",
    dashes: false,
  },
  TAD: {
    ...USUAL,
    language: "es",
    encoding: "utf-8",
    marked: true,
    separator: ",",
    decimalMark: ".",
    dateShape: "d/m/Y",
  },
  THO: {
    ...USUAL,
    language: "en",
    format: "workbook",
    encoding: "utf-8",
    separator: ",",
    decimalMark: ".",
    dateShape: "Y-m-d",
  },
};

/** The purchasing office's own file of supply dates. */
export const GROUP_HABITS: Habits = {
  ...USUAL,
  language: "en",
  encoding: "utf-8",
  separator: ",",
  decimalMark: ".",
  dateShape: "Y-m-d",
};
