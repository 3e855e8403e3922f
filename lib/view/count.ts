import type { IsoDate } from "@/lib/kernel/isoDate";
import type { TypedCount } from "@/lib/schema/count";
import { needsSecondPerson, stateAfterCount, type Variance, varianceOf } from "@/lib/spares/countedLine";
import type { StockState } from "@/lib/spares/usableCount";
import { count } from "@/lib/view/number";
import { stockStateName } from "@/lib/view/partShelf";
import { day } from "@/lib/view/time";

/** A count in the list of counts. */
export interface ListedCount {
  readonly id: string;
  readonly siteCode: string;
  readonly siteName: string;
  readonly reference: string;
  readonly bins: string;
  readonly blind: boolean;
  readonly openedOn: IsoDate;
  readonly openedBy: string;
  readonly postedOn: IsoDate | null;
  readonly postedBy: string | null;
  readonly lines: number;
  readonly counted: number;
}

/** What the books said of a line when it was last written. */
export interface CountBook {
  readonly state: StockState;
  /** Null is never counted. */
  readonly quantity: number | null;
  readonly lastPoweredOn: IsoDate | null;
}

/** A line of a sheet as whoever counts sees it. */
export interface CountLine {
  readonly id: string;
  readonly bin: string;
  readonly revision: string;
  /** Number of the part; null is a plate nobody knows. */
  readonly part: string | null;
  readonly description: string | null;
  readonly plate: string;
  /** Found without a record. */
  readonly isFind: boolean;
  /** Null is hidden from whoever counts blind, and for a find. */
  readonly book: CountBook | null;
  readonly entry: TypedCount;
  readonly countedBy: string;
  readonly version: number;
}

export interface CountSheet extends Omit<ListedCount, "lines" | "counted"> {
  readonly siteId: string;
  readonly limitEuro: number;
  readonly approvedOn: IsoDate | null;
  readonly approvedBy: string | null;
  readonly lines: readonly CountLine[];
  readonly mayCount: boolean;
  readonly mayPost: boolean;
}

/** A line as it compares with the book. */
export interface ComparedLine {
  readonly id: string;
  readonly bin: string;
  readonly revision: string;
  readonly part: string | null;
  readonly partId: string | null;
  readonly plate: string;
  readonly isFind: boolean;
  readonly book: CountBook | null;
  readonly found: number | null;
  readonly state: StockState | null;
  readonly tested: boolean | null;
  readonly originUnknown: boolean;
  readonly holdReason: string;
  readonly note: string;
  readonly countedBy: string;
  /** EUR a piece and the day of the price; null is not known. */
  readonly price: number | null;
  readonly pricedOn: IsoDate | null;
  /** The shelf has moved since the line was written. */
  readonly moved: boolean;
}

/** A line as it would be posted. */
export interface VarianceLine extends ComparedLine {
  readonly variance: Variance;
  /** What the pieces are booked as. */
  readonly booked: StockState;
  readonly differs: boolean;
}

/** Everything a person weighs before a count is posted. */
export interface VarianceSheet {
  readonly lines: readonly VarianceLine[];
  readonly notCounted: number;
  /** Plates nobody knows: they stay on the sheet and are not booked. */
  readonly unknownPlates: readonly ComparedLine[];
  readonly moved: readonly ComparedLine[];
  /** EUR; null when a difference cannot be valued. */
  readonly less: number | null;
  readonly more: number | null;
  readonly needsSecond: boolean;
}

function varianceLine(line: ComparedLine & { readonly found: number }): VarianceLine {
  const { found, book, price, state, tested, originUnknown, holdReason } = line;
  const variance = varianceOf({ found, book: line.isFind ? 0 : (book?.quantity ?? null), price });
  const booked = stateAfterCount({ found, state: state ?? "usable", tested, originUnknown, holdReason });
  const differs = variance.pieces !== 0 || (found > 0 && booked !== book?.state);
  return { ...line, variance, booked, differs };
}

function worth(lines: readonly VarianceLine[], sign: 1 | -1): number | null {
  let sum = 0;
  for (const { variance } of lines) {
    if (variance.euro === null) return null;
    sum += Math.max(0, sign * variance.euro);
  }
  return sum;
}

/** Book against counted, line by line, with what it is worth and who has to agree. */
export function varianceSheet(lines: readonly ComparedLine[], limitEuro: number): VarianceSheet {
  const counted = lines.filter((line): line is ComparedLine & { found: number } => line.found !== null);
  const known = counted.filter(({ partId }) => partId !== null).map(varianceLine);
  return {
    lines: known,
    notCounted: lines.length - counted.length,
    unknownPlates: counted.filter(({ partId }) => partId === null),
    moved: known.filter(({ moved }) => moved),
    less: worth(known, -1),
    more: worth(known, 1),
    needsSecond: needsSecondPerson(
      known.map(({ variance }) => variance),
      limitEuro,
    ),
  };
}

/** A line nobody has written yet; the condition stands as on the book, when the book may be seen. */
export const blankCount = (state: StockState): TypedCount => ({
  ...{ found: "", state, lastPoweredOn: "", tested: "", originUnknown: false, holdReason: "", note: "" },
});

/** What bins a count is of, in words. */
export function binsWords(bins: string): string {
  return bins === "" ? "the whole store" : `bins ${bins}…`;
}

/** What a line is called: `Bin R3-014, TM-HR-010 B2`. */
export function lineTitle({
  bin,
  part,
  plate,
  revision,
}: Pick<CountLine, "bin" | "part" | "plate" | "revision">): string {
  const name = part ?? `plate ${plate}`;
  return `Bin ${bin}, ${name}${revision === "" ? "" : ` ${revision}`}`;
}

/** The book of a line: `4 pieces, usable, last powered 3 Apr 2026`. */
export function bookWords({ quantity, state, lastPoweredOn }: CountBook): string {
  const pieces = quantity === null ? "never counted" : count(quantity, "piece");
  return `${pieces}, ${stockStateName(state).toLowerCase()}, last powered ${day(lastPoweredOn)}`;
}

const TESTED = { "": "", yes: "tested", no: "not tested" } as const;

/** What was written of a line: `3, usable, not tested; by Technician A`. */
export function entryWords(entry: TypedCount, by: string): string {
  if (entry.found === "") return "not counted";
  const said = [
    entry.found,
    stockStateName(entry.state).toLowerCase(),
    entry.lastPoweredOn === "" ? "" : `powered ${entry.lastPoweredOn}`,
    TESTED[entry.tested],
    entry.originUnknown ? "origin not known" : "",
    entry.holdReason === "" ? "" : `on hold: ${entry.holdReason}`,
    entry.note,
  ];
  return `${said.filter((word) => word !== "").join(", ")}${by === "" ? "" : `; by ${by}`}`;
}
