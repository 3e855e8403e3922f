import type { IsoDate } from "@/lib/kernel/isoDate";
import type { SupplyStage } from "@/lib/lifecycle/supplyStage";
import type { MovedPool } from "@/lib/risk/moved/movedPools";
import type { MovedStep } from "@/lib/risk/moved/snapshotInput";
import type { StockState } from "@/lib/spares/usableCount";
import type { DateAhead } from "@/lib/view/datesAhead";
import type { ToldInput } from "@/lib/view/moved";

/** What a review is compared with. */
export interface ReviewBase {
  /** The last review of the site; else a stored snapshot; else the records as known a week earlier. */
  readonly kind: "review" | "snapshot" | "records";
  readonly asOf: IsoDate;
}

/** A part of the site that got worse, with what moved it. */
export interface WorsePart extends MovedPool {
  readonly number: string;
  readonly description: string;
  readonly stage: SupplyStage;
  /** The step that made most of it. */
  readonly main: MovedStep;
  /** Inputs behind the steps, as a reader of this site alone may see them. */
  readonly inputs: readonly ToldInput[];
  readonly href: string | null;
}

export interface OverdueRepair {
  readonly reference: string;
  readonly partId: string;
  readonly number: string;
  readonly serial: string | null;
  readonly sentOn: IsoDate;
  readonly dueOn: IsoDate;
}

/** A lot of the site that is held, or whose pieces nobody counted for long. */
export interface ShelfLot {
  readonly lotId: string;
  readonly partId: string;
  readonly number: string;
  readonly bin: string;
  readonly state: StockState;
  /** Null is not counted. */
  readonly quantity: number | null;
  readonly countedOn: IsoDate | null;
  readonly note: string | null;
}

/** A transfer with an end at the site that waits for a yes; the other end is not named. */
export interface ProposedTransfer {
  readonly id: string;
  readonly partId: string;
  readonly number: string;
  readonly pieces: number;
  readonly way: "in" | "out";
}

/** Lots counted long ago or never; the first of them. */
export interface Uncounted {
  readonly lots: number;
  readonly of: number;
  readonly first: readonly ShelfLot[];
}

/** What one review shows of its site, all as of one day. */
export interface ReviewFigures {
  readonly asOf: IsoDate;
  readonly siteCode: string;
  readonly siteName: string;
  readonly engine: string;
  readonly base: ReviewBase;
  /** Parts installed at the site that were compared. */
  readonly parts: number;
  readonly better: number;
  readonly worse: readonly WorsePart[];
  readonly dates: readonly DateAhead[];
  readonly repairs: readonly OverdueRepair[];
  readonly holds: readonly ShelfLot[];
  readonly transfers: readonly ProposedTransfer[];
  readonly uncounted: Uncounted;
}

/** Least change that is listed; less is the noise of the days that pass. */
export const WORSE_FROM = { noSparePerMille: 2, loss: 500, usableTenths: 5 } as const;

/** The threshold in words; without its amount where amounts are not shown. */
export function worseWords(showsAmounts: boolean): string {
  return showsAmounts
    ? "Listed from a gain of 0.2 points in the chance of no spare, €\u00a0500 a year in the loss here, or a fall of half a usable piece here."
    : "Listed from a gain of 0.2 points in the chance of no spare, or a fall of half a usable piece here.";
}

/** Whether a part got worse by enough to be talked about. */
export function gotWorse({ noSpare, loss, usable }: MovedPool): boolean {
  return (
    noSpare.change >= WORSE_FROM.noSparePerMille ||
    loss.change >= WORSE_FROM.loss ||
    -usable.change >= WORSE_FROM.usableTenths
  );
}

/** Whether it got better by as much, and in nothing worse. */
export function gotBetter(pool: MovedPool): boolean {
  const { noSpare, loss, usable } = pool;
  const gained =
    -noSpare.change >= WORSE_FROM.noSparePerMille ||
    -loss.change >= WORSE_FROM.loss ||
    usable.change >= WORSE_FROM.usableTenths;
  return gained && !gotWorse(pool);
}

/** The most expensive change first, then the chance gained, then the part. */
export function byWorse(a: MovedPool, b: MovedPool): number {
  return (
    b.loss.change - a.loss.change ||
    b.noSpare.change - a.noSpare.change ||
    a.usable.change - b.usable.change ||
    (a.poolId < b.poolId ? -1 : 1)
  );
}

/** The step that made most of what is listed: in loss where that counts, else in the chance, else on the shelf. */
export function mainStep({ noSpare, loss, usable }: MovedPool): MovedStep {
  if (loss.change >= WORSE_FROM.loss) return largest(loss.steps, 1);
  return noSpare.change >= WORSE_FROM.noSparePerMille ? largest(noSpare.steps, 1) : largest(usable.steps, -1);
}

function largest(steps: Readonly<Record<MovedStep, number>>, sign: 1 | -1): MovedStep {
  const [most] = (Object.entries(steps) as [MovedStep, number][]).sort((a, b) => sign * (b[1] - a[1]));
  return most?.[0] ?? "clock";
}

const DAYS_AHEAD = 90;

/** Days of dates that a review talks about, the last of which is also how far it looks. */
export const REVIEW_SPANS = [30, 60, DAYS_AHEAD] as const;

/** Within how many days a date comes, as one of the spans; 0 is past. */
export function spanOf(daysAway: number): 0 | (typeof REVIEW_SPANS)[number] {
  if (daysAway < 0) return 0;
  return REVIEW_SPANS.find((span) => daysAway <= span) ?? DAYS_AHEAD;
}

/** A stock count older than this is overdue; common practice for slow movers, no source. */
export const COUNT_MONTHS = 12;

const BASE_WORDS = {
  review: "the last review",
  snapshot: "the last snapshot",
  records: "the records as known a week earlier; the shelf has no past, so both days use it as it stands",
} as const satisfies Record<ReviewBase["kind"], string>;

/** What a review is compared with, in words. */
export function baseWords({ kind }: ReviewBase): string {
  return BASE_WORDS[kind];
}

/** Which way a transfer goes, seen from the site. */
export function transferWay(way: ProposedTransfer["way"]): string {
  return way === "in" ? "to here" : "from here";
}
