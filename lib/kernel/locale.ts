/** Languages the words of a page can be read in. */
export const LANGUAGES = ["en", "de"] as const;
export type Language = (typeof LANGUAGES)[number];

/** Marks of a written number: what stands between groups of three digits, and before the decimals. */
export const NUMBER_STYLES = ["space-point", "space-comma", "point-comma"] as const;
export type NumberStyle = (typeof NUMBER_STYLES)[number];

/** How whoever is reading wants words, days and numbers written. */
export interface Locale {
  readonly language: Language;
  readonly numbers: NumberStyle;
}

/** What is written where nobody's wish is known: in files, in what is stored, in tests. */
export const PLAIN: Locale = { language: "en", numbers: "space-point" };

/** Marks a language goes with unless a person chose others. */
export const USUAL_NUMBERS: Readonly<Record<Language, NumberStyle>> = {
  en: "space-point",
  de: "space-comma",
};

/** Where the edge (`lib/words`) puts the one thing formats ask of the world around them: whose eyes they write for. */
export const READER = Symbol.for("ebbline.reader");

const world = globalThis as { [READER]?: () => Locale };

/** How the present reader wants things written; plain where no page is being made. */
export const locale = (): Locale => world[READER]?.() ?? PLAIN;

/** Narrow space that does not break: between groups of digits. */
const THIN = "\u202f";

interface Marks {
  readonly group: string;
  readonly decimal: string;
}

const MARKS: Readonly<Record<NumberStyle, Marks>> = {
  "space-point": { group: THIN, decimal: "." },
  "space-comma": { group: THIN, decimal: "," },
  "point-comma": { group: ".", decimal: "," },
};

/** The marks the present reader's numbers are written with. */
export const marks = (): Marks => MARKS[locale().numbers];

/** A word as a language this product speaks; null for anything else. */
export const languageOf = (word: string | null | undefined): Language | null =>
  LANGUAGES.find((language) => language === word) ?? null;

/** A word as a style of numbers; null for anything else. */
export const numberStyleOf = (word: string | null | undefined): NumberStyle | null =>
  NUMBER_STYLES.find((style) => style === word) ?? null;
