import { addMonths, daysBetween, type IsoDate } from "@/lib/kernel/isoDate";
import type { SupplyStage } from "@/lib/lifecycle/supplyStage";
import type { ItemClass, Span } from "@/lib/risk/evaluation";
import { coverDay } from "@/lib/spares/coverDay";
import type { ToldPrice } from "@/lib/view/poolBoard";

const DAYS_PER_MONTH = 365.25 / 12;

/** Pieces that reach the shelf on a day. */
export interface ComingPieces {
  readonly from: "repair" | "retrofit";
  readonly on: IsoDate;
  readonly pieces: number;
  /** Chance that each works. */
  readonly works: number;
}

/** What is known of a part's pool for its ladder. */
export interface CoverFacts {
  readonly partId: string;
  readonly number: string;
  readonly maker: string;
  readonly itemClass: ItemClass;
  readonly family: string | null;
  readonly stage: SupplyStage;
  readonly installed: number;
  readonly book: number | null;
  readonly usable: number;
  readonly removalsPerYear: number;
  /** Mean of the first year. */
  readonly noSpare: Span;
  readonly noSpareByMonth: readonly Span[];
  readonly depletionP50: IsoDate | null;
  readonly depletionP80: IsoDate | null;
  /** Planned removals, the earliest first. */
  readonly leaving: readonly { readonly on: IsoDate; readonly units: number }[];
  readonly coming: readonly ComingPieces[];
  /** EUR a year lost for want of a spare on the reader's lines; null where no line has a cost per hour. */
  readonly shortageLoss: number | null;
  readonly price: ToldPrice | null;
  readonly priceEuro: number | null;
}

/** Days by which the shelf is likely to be found empty; null is beyond the months computed. */
export interface CoverDays {
  readonly p50: IsoDate | null;
  readonly p80: IsoDate | null;
  readonly p95: IsoDate | null;
  /** P80 with the rate at its 95 % point, and at its 5 % point. */
  readonly p80Early: IsoDate | null;
  readonly p80Late: IsoDate | null;
}

/** How the day the shelf is likely empty lies to the day the last unit leaves. */
export type ExitGap =
  /** No unit has a planned removal. */
  | { readonly kind: "none" }
  /** Some units stay: there is no day the last one leaves. */
  | { readonly kind: "some"; readonly leaving: number; readonly staying: number; readonly lastOn: IsoDate }
  /** All leave; months from then to the likely empty shelf, negative is trouble, null is not within the months. */
  | { readonly kind: "all"; readonly lastOn: IsoDate; readonly months: number | null };

export interface CoverLadder extends CoverFacts {
  readonly days: CoverDays;
  readonly exit: ExitGap;
  /** Loss per price, a year; null when either is not known. */
  readonly lossPerPrice: number | null;
}

/** Pieces that come on one day from one side with one chance of working, put together, in order of their days. */
export function comingByDay(coming: readonly ComingPieces[]): ComingPieces[] {
  const out = new Map<string, ComingPieces>();
  for (const one of coming) {
    const key = `${one.on} ${one.from} ${one.works}`;
    out.set(key, { ...one, pieces: one.pieces + (out.get(key)?.pieces ?? 0) });
  }
  return [...out.values()].sort((a, b) => (a.on < b.on ? -1 : Number(a.on > b.on)));
}

function coverDays(facts: CoverFacts, asOf: IsoDate): CoverDays {
  const along = (end: keyof Span) => facts.noSpareByMonth.map((span) => span[end]);
  return {
    p50: facts.depletionP50,
    p80: facts.depletionP80,
    p95: coverDay(along("mean"), { chance: 0.95, asOf }),
    p80Early: coverDay(along("high"), { chance: 0.8, asOf }),
    p80Late: coverDay(along("low"), { chance: 0.8, asOf }),
  };
}

/**
 * Exit gap = likely empty day (P80) less the day the last unit leaves, months: negative is the time the last units
 * stand without a spare.
 */
export function exitGap({ leaving, installed, depletionP80 }: CoverFacts): ExitGap {
  const last = leaving.at(-1);
  if (!last) return { kind: "none" };
  const going = leaving.reduce((sum, { units }) => sum + units, 0);
  if (going < installed) return { kind: "some", leaving: going, staying: installed - going, lastOn: last.on };
  const months = depletionP80 === null ? null : daysBetween(last.on, depletionP80) / DAYS_PER_MONTH;
  return { kind: "all", lastOn: last.on, months };
}

/** A part's ladder from what is known of it. */
export function coverLadder(facts: CoverFacts, asOf: IsoDate): CoverLadder {
  const { shortageLoss, priceEuro } = facts;
  const known = shortageLoss !== null && priceEuro !== null && priceEuro > 0;
  return {
    ...facts,
    days: coverDays(facts, asOf),
    exit: exitGap(facts),
    lossPerPrice: known ? shortageLoss / priceEuro : null,
  };
}

/** Cheap blockers first: by loss per price, then those that cannot be weighed by their loss. */
export function cheapBlockersFirst(ladders: readonly CoverLadder[]): CoverLadder[] {
  return [...ladders].sort(
    (a, b) =>
      (b.lossPerPrice ?? -1) - (a.lossPerPrice ?? -1) ||
      (b.shortageLoss ?? -1) - (a.shortageLoss ?? -1) ||
      (a.number < b.number ? -1 : 1),
  );
}

/** The day the shelf is likely empty (P80) first, then the chance of no spare. */
export function emptySoonestFirst(ladders: readonly CoverLadder[]): CoverLadder[] {
  const never = "9999-12-31";
  const keyOf = ({ days }: CoverLadder) => days.p80 ?? never;
  return [...ladders].sort(
    (a, b) =>
      (keyOf(a) < keyOf(b) ? -1 : Number(keyOf(a) > keyOf(b))) ||
      b.noSpare.mean - a.noSpare.mean ||
      (a.number < b.number ? -1 : 1),
  );
}

/** One rung: how things stand so many months ahead. */
export interface CoverRung {
  readonly months: number;
  readonly on: IsoDate;
  readonly noSpare: Span;
  /** Pieces expected to work that have come by then. */
  readonly come: number;
  /** Units that have left by then. */
  readonly left: number;
}

const RUNGS = [0, 3, 6, 9, 12, 18, 24, 36, 48, 60];

/** The rungs of a part, as far as the months computed go. */
export function coverRungs({ noSpareByMonth, coming, leaving }: CoverFacts, asOf: IsoDate): CoverRung[] {
  return RUNGS.flatMap((months) => {
    const noSpare = noSpareByMonth[months];
    const on = addMonths(asOf, months);
    const by = <T extends { readonly on: IsoDate }>(list: readonly T[]) => list.filter((one) => one.on <= on);
    return noSpare
      ? [
          {
            ...{ months, on, noSpare },
            come: by(coming).reduce((sum, { pieces, works }) => sum + pieces * works, 0),
            left: by(leaving).reduce((sum, { units }) => sum + units, 0),
          },
        ]
      : [];
  });
}

/** Months ahead whose chances a row of the table shows. */
export const ROW_MONTHS = [3, 12, 24] as const;

/** A ladder without what only its own page shows. */
export interface CoverRow extends Omit<CoverLadder, "noSpareByMonth" | "coming" | "leaving"> {
  /** Months computed. */
  readonly months: number;
  /** Chances at `ROW_MONTHS`; null is beyond the months computed. */
  readonly noSpareAt: readonly (Span | null)[];
}

/** A ladder as a row. */
export function coverRow({ noSpareByMonth, coming: _, leaving: __, ...ladder }: CoverLadder): CoverRow {
  return {
    ...ladder,
    months: noSpareByMonth.length - 1,
    noSpareAt: ROW_MONTHS.map((month) => noSpareByMonth[month] ?? null),
  };
}
