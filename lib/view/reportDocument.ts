import type { IsoDate } from "@/lib/kernel/isoDate";
import type { SupplyStage } from "@/lib/lifecycle/supplyStage";
import type { Span } from "@/lib/risk/evaluation";
import type { ReportKind } from "@/lib/schema/report";

/** A value of a report as it is known, before anybody writes it as text; what it is of opens at `href`. */
export type ReportCell = (
  | { readonly kind: "text"; readonly text: string }
  /** An estimate in EUR; null is not known. */
  | { readonly kind: "money"; readonly value: number | null }
  /** An estimate in EUR with its range; null is not known. */
  | { readonly kind: "span"; readonly span: Span | null }
  /** Money of a project in its own currency; null is not defined. */
  | { readonly kind: "local"; readonly value: number | null; readonly currency: string }
  /** Null is not known, or what `none` says. */
  | {
      readonly kind: "number";
      readonly value: number | null;
      readonly places: number;
      readonly none?: string;
    }
  /** A share or chance in [0, 1]. */
  | { readonly kind: "share"; readonly value: number | null; readonly none?: string }
  /** A day, or words where there is none; `mark` follows the day. */
  | { readonly kind: "date"; readonly on: IsoDate | null; readonly none?: string; readonly mark?: string }
  /** Two figures that are read together, each null where it is not known or not defined. */
  | {
      readonly kind: "pair";
      readonly values: readonly [number | null, number | null];
      readonly share: boolean;
      readonly places: number;
      readonly none?: string;
    }
  | { readonly kind: "stage"; readonly stage: SupplyStage | null }
) & { readonly href?: string | null };

export type CellKind = ReportCell["kind"];

export interface ReportColumn {
  /** That of a pair names both, parted by ` / `. */
  readonly title: string;
  readonly kind: CellKind;
  /** Share of the table's width, in parts. */
  readonly width: number;
}

export interface ReportRow {
  readonly key: string;
  readonly cells: readonly ReportCell[];
}

/** Which columns of a table are also drawn, as bars by the first column. */
export interface ReportChart {
  readonly title: string;
  /** Title of what the bars are measured in. */
  readonly unit: string;
  readonly series: readonly ReportSeries[];
}

export interface ReportSeries {
  readonly name: string;
  /** A value for each row of the table; null is a gap. */
  readonly values: readonly (number | null)[];
}

export interface ReportTable {
  readonly kind: "table";
  readonly title: string;
  readonly columns: readonly ReportColumn[];
  readonly rows: readonly ReportRow[];
  /** What stands in place of rows. */
  readonly none: string;
  readonly note: string | null;
  /** Page with all of it. */
  readonly href: string;
  readonly chart: ReportChart | null;
  /** Stands beside the next block where there is room. */
  readonly half: boolean;
}

export interface ReportItem {
  readonly text: string;
  readonly href: string | null;
}

export interface ReportList {
  readonly kind: "list";
  readonly title: string;
  readonly items: readonly ReportItem[];
  readonly none: string;
  readonly note: string | null;
  readonly half: boolean;
}

export type ReportBlock = ReportTable | ReportList;

export interface ReportPage {
  readonly title: string;
  readonly blocks: readonly ReportBlock[];
}

/** The figure a report opens with. */
export interface ReportHeadline {
  /** EUR a year; null is not known. */
  readonly loss: Span | null;
  /** Of its middle, what is lost only because a failure finds no usable spare, EUR a year; null is not known. */
  readonly shortage: number | null;
  /** What its range is. */
  readonly words: string;
  readonly sentences: readonly string[];
  readonly href: string;
}

/** What the figures rest on. */
export interface ReportBasis {
  readonly asOf: IsoDate;
  readonly dataVersion: number;
  readonly engine: string;
  /** The set of assumptions in words. */
  readonly assumptions: string;
  /** Seed of the draws behind the spans. */
  readonly seed: number;
}

/** A report whole: screen, paper and files are drawn from it and from nothing else. */
export interface ReportDocument {
  /** Raised when a later version of the product writes it otherwise. */
  readonly form: 1;
  readonly kind: ReportKind;
  /** Month `2026-11` or week `2026-W48`. */
  readonly period: string;
  readonly title: string;
  /** Null is every site its reader sees. */
  readonly siteCode: string | null;
  readonly scope: string;
  readonly basis: ReportBasis;
  /** Null in a weekly report. */
  readonly headline: ReportHeadline | null;
  readonly pages: readonly ReportPage[];
  /** What is assumed and not measured, and what the figures are not for. */
  readonly cautions: readonly { readonly title: string; readonly text: string }[];
}
