import type { NameSuggestion } from "@/lib/intake/suggestNames";

/** A system files come from. */
export interface SourceName {
  readonly id: string;
  readonly name: string;
  readonly siteCode: string | null;
}

export interface ListedSource extends SourceName {
  readonly files: number;
  readonly words: number;
  /** Registers it was read into, by label. */
  readonly registers: readonly string[];
}

/** One version of how files of a source are read. */
export interface SourceVersion {
  readonly register: string;
  readonly registerLabel: string;
  readonly version: number;
  readonly changedBy: string;
  readonly changedAt: string;
  /** Header and the field it goes into; null is left out. */
  readonly columns: readonly { readonly header: string; readonly field: string | null }[];
  /** What a person said of it, in words. */
  readonly answers: readonly string[];
  /** The source's own words for nothing; null is the product's list. */
  readonly nullWords: readonly string[] | null;
}

/** What a source means by a word. */
export interface TaughtWord {
  readonly id: string;
  readonly kind: "line" | "machine" | "choice" | "text";
  readonly within: string;
  readonly written: string;
  readonly meaning: string;
  readonly by: string;
  readonly on: string;
}

/** A word of the source's files that nothing on record is called. */
export interface OpenWord {
  readonly kind: "line" | "machine" | "choice" | "text";
  readonly within: string;
  readonly written: string;
  readonly rows: number;
  readonly detail: string;
  /** What it may mean, likeliest first. */
  readonly suggestions: readonly NameSuggestion[];
  /** Everything it can mean. */
  readonly choices: readonly { readonly value: string; readonly label: string }[];
}

export interface SourceDetail extends SourceName {
  readonly versions: readonly SourceVersion[];
  readonly words: readonly TaughtWord[];
  readonly open: readonly OpenWord[];
  readonly files: readonly {
    readonly id: string;
    readonly fileName: string;
    readonly state: "staged" | "committed" | "undone";
  }[];
}

const KINDS = { line: "Line", machine: "Machine", choice: "Value", text: "Word of a text" } as const;

/** What kind of word it is: `Machine on VEL-03`. */
export function wordKind({ kind, within }: Pick<TaughtWord, "kind" | "within">): string {
  if (kind === "machine") return `Machine on ${within}`;
  return kind === "line" ? KINDS.line : `${KINDS[kind]}, ${fieldWord(within)}`;
}

function fieldWord(field: string): string {
  return field.replace(/([a-z])([A-Z])/g, "$1 $2").toLowerCase();
}

const ANSWERS: Readonly<Record<string, string>> = {
  comma: "decimal comma",
  point: "decimal point",
  dayFirst: "day before month",
  monthFirst: "month before day",
  total: "quantities are pieces on the shelf",
  perMachine: "quantities are pieces in each machine",
};

/** What a person said of a file's numbers, dates and quantities, in words. */
export function answerWords(answers: Readonly<Record<string, unknown>>): string[] {
  return Object.entries(answers).flatMap(([key, value]) => {
    if (key === "nullWords" || typeof value !== "string") return [];
    const size = /^sets:(\d+)$/.exec(value)?.[1];
    return [size === undefined ? (ANSWERS[value] ?? value) : `quantities are sets of ${size}`];
  });
}

/** Of each register the version in use; versions come newest first. */
export function latestVersions(versions: readonly SourceVersion[]): SourceVersion[] {
  const seen = new Set<string>();
  return versions.filter(({ register }) => !seen.has(register) && seen.add(register));
}
