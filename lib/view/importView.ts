import type { ReadingChoice, SheetOffer } from "@/lib/intake/openRegister";
import type { RegisterKey } from "@/lib/intake/registers";
import type { SkippedRow } from "@/lib/intake/splitBody";
import type { FieldChange, ThingCount } from "@/lib/view/importChanges";
import type {
  ImportColumn,
  ImportCustom,
  PreviewRow,
  PreviewTotals,
  RowProblem,
} from "@/lib/view/importPreview";

/** A file of the list: what it is, who brought it, what became of it. */
export interface ImportHead {
  readonly id: string;
  readonly register: RegisterKey;
  readonly registerLabel: string;
  readonly fileName: string;
  readonly by: string;
  /** Instants as RFC 3339. */
  readonly createdAt: string;
  readonly state: "staged" | "committed" | "undone";
  readonly committedAt: string | null;
  readonly undoneAt: string | null;
  readonly counts: {
    readonly added: number;
    readonly changed: number;
    readonly unchanged: number;
    readonly refused: number;
  };
}

export interface ImportList {
  readonly files: readonly ImportHead[];
  /** Whether the installation knows no site yet. */
  readonly isEmpty: boolean;
}

/** How a file was read before anything was understood. */
export interface ImportOpening {
  readonly format: "csv" | "workbook";
  readonly encoding: string | null;
  readonly separator: string | null;
  readonly sheet: string;
  readonly sheets: readonly SheetOffer[];
  readonly headerRow: number;
  readonly headerLines: 1 | 2;
  /** Letters a spreadsheet shows above the first columns. */
  readonly letters: readonly string[];
  /** The first rows as they stand; texts by those letters. */
  readonly firstRows: readonly {
    readonly rowNumber: number;
    readonly cells: Readonly<Record<string, string>>;
  }[];
  /** Columns further right that are not among them. */
  readonly columnsLeft: number;
  /** What a person chose; the rest was found. */
  readonly chosen: ReadingChoice;
  /** What a person should know of the file beside its cells. */
  readonly notes: readonly string[];
  readonly skipped: readonly SkippedRow[];
  readonly skippedCount: number;
}

/** A page of a long list. */
export interface Paged<T> {
  readonly shown: readonly T[];
  /** Of all pages. */
  readonly count: number;
  /** Where the next page begins; null on the last. */
  readonly next: string | null;
}

/** Where the pages of the long lists begin that are wanted. */
export interface ImportPages {
  readonly problems?: string | undefined;
  readonly changes?: string | undefined;
  readonly made?: string | undefined;
}

/** Further pages; null where none was asked for. */
export interface ImportMore {
  readonly problems: Omit<Paged<RowProblem>, "count"> | null;
  readonly changes: Omit<Paged<FieldChange>, "count"> | null;
  readonly made: Omit<Paged<MadeThing>, "count"> | null;
}

/** What a row of a loaded file made or changed. */
export interface MadeThing {
  /** Order of writing. */
  readonly place: number;
  readonly rowNumber: number;
  readonly thing: string;
  readonly name: string;
  readonly kind: "added" | "changed";
}

/** Stored things an earlier file spoke of and a later one does not; nothing is taken out. */
export interface VanishedThings {
  readonly fileName: string;
  readonly at: string | null;
  readonly count: number;
  readonly shown: readonly { readonly thing: string; readonly name: string }[];
}

/** What a reading tells of the file as a whole, kept until it is read again. */
export type StagedSummary = Omit<StagedImport, "changes" | "problems" | "loadedBefore" | "isStale"> & {
  readonly changeCount: number;
  readonly problemCount: number;
  readonly siteCodes: readonly string[];
};

/** What is being done with a file, or why nothing is. */
export interface ImportProgress {
  readonly state: "reading" | "loading" | "interrupted" | "failed" | "stopped";
  readonly rows: number;
  readonly rowsPerSecond: number | null;
  /** Share of the bytes, 0 to 1. */
  readonly share: number;
  /** Why it ended without a result. */
  readonly note: string | null;
}

/** What a file that is not loaded yet would do. */
export interface StagedImport {
  readonly opening: ImportOpening;
  readonly columns: readonly ImportColumn[];
  readonly customs: readonly ImportCustom[];
  /** What is wrong with the file as a whole; nothing can be loaded until it is mended. */
  readonly missing: readonly string[];
  readonly totals: PreviewTotals;
  /** Rows a person leaves out that the file has. */
  readonly leftOut: readonly number[];
  /** Rows that would be taken over. */
  readonly loadable: number;
  /** Rows that stay out only because of what is stored: they can be taken in once that is cured. */
  readonly waiting: number;
  readonly things: readonly ThingCount[];
  readonly changes: Paged<FieldChange>;
  readonly problems: Paged<RowProblem>;
  /** What the last file of its kind spoke of and this one does not. */
  readonly vanished: VanishedThings | null;
  /** The records changed since it was read, and reading it again takes a while. */
  readonly isStale: boolean;
  readonly labels: readonly string[];
  readonly rows: readonly PreviewRow[];
  /** The same file, byte for byte, already loaded. */
  readonly loadedBefore: { readonly id: string; readonly at: string | null } | null;
}

/** What a loaded file did. */
export interface LoadedImport {
  readonly things: readonly ThingCount[];
  readonly changes: Paged<FieldChange>;
  /** What each row made, in the order it was written. */
  readonly made: Omit<Paged<MadeThing>, "count">;
  /** Rows that stayed out, with the reason. */
  readonly problems: Paged<RowProblem>;
  /** Rows that can be taken in once what is stored allows it, and the later batches that tried. */
  readonly waiting: number;
  readonly rests: readonly { readonly id: string; readonly state: string; readonly at: string }[];
}

export interface ImportView {
  readonly head: ImportHead;
  /** While it is read or loaded, and when that did not come to its end. */
  readonly progress: ImportProgress | null;
  /** Until the file is loaded. */
  readonly staged: StagedImport | null;
  /** Once it was loaded, also when it was taken back. */
  readonly loaded: LoadedImport | null;
}
