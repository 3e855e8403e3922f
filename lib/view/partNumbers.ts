/** A part on record by name. */
export interface NamedPart {
  readonly id: string;
  readonly maker: string;
  readonly number: string;
  readonly description: string;
}

/** A part a number may mean, with why and how much speaks for it, 0 to 1. */
export interface SuggestedPart extends NamedPart {
  readonly score: number;
  readonly why: string;
}

/** A number of loaded or waiting files that nothing on record is called. */
export interface OpenNumber {
  readonly written: string;
  readonly maker: string;
  readonly siteCode: string;
  readonly detail: string;
  readonly rows: number;
  readonly files: readonly { readonly batchId: string; readonly fileName: string }[];
  readonly suggestions: readonly SuggestedPart[];
  /** A person put it off. */
  readonly later: boolean;
}

/** Two parts on record that may be one. */
export interface LikePair {
  readonly first: NamedPart;
  readonly second: NamedPart;
  readonly score: number;
  readonly why: string;
}

/** What a person said of a number. */
export interface SaidNumber {
  readonly id: string;
  readonly kind: "alias" | "verdict";
  readonly written: string;
  /** In words: "is TM-HR-020 everywhere". */
  readonly said: string;
  readonly reason: string;
  readonly by: string;
  readonly on: string;
}

/** A merge, standing or taken back. */
export interface MadeMerge {
  readonly id: string;
  readonly kept: NamedPart;
  readonly other: NamedPart;
  readonly moved: readonly string[];
  readonly reason: string;
  readonly by: string;
  readonly on: string;
  readonly undone: { readonly by: string; readonly on: string; readonly stayed: readonly string[] } | null;
}

export interface PartNumbers {
  readonly open: readonly OpenNumber[];
  readonly openCount: number;
  readonly pairs: readonly LikePair[];
  readonly said: readonly SaidNumber[];
  readonly merges: readonly MadeMerge[];
  /** Whether the person may settle for every site, and so merge. */
  readonly everySite: boolean;
}

/** How much speaks for a suggestion, as a share. */
export function scoreWord(score: number): string {
  return `${Math.round(score * 100)} of 100`;
}
