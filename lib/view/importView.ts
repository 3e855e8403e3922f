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
  readonly headerRow: number;
  readonly skipped: readonly SkippedRow[];
  readonly skippedCount: number;
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
  readonly things: readonly ThingCount[];
  readonly changes: { readonly shown: readonly FieldChange[]; readonly count: number };
  readonly problems: { readonly shown: readonly RowProblem[]; readonly count: number };
  readonly labels: readonly string[];
  readonly rows: readonly PreviewRow[];
  /** The same file, byte for byte, already loaded. */
  readonly loadedBefore: { readonly id: string; readonly at: string | null } | null;
}

/** What a loaded file did. */
export interface LoadedImport {
  readonly things: readonly ThingCount[];
  readonly changes: { readonly shown: readonly FieldChange[]; readonly count: number };
}

export interface ImportView {
  readonly head: ImportHead;
  /** Until the file is loaded. */
  readonly staged: StagedImport | null;
  /** Once it was loaded, also when it was taken back. */
  readonly loaded: LoadedImport | null;
}
