import type { IsoDate } from "@/lib/kernel/isoDate";
import type { SupplyStage } from "@/lib/lifecycle/supplyStage";
import type { NoOffer } from "@/lib/risk/buyOffer";
import { readTypedNumber } from "@/lib/schema/typedNumber";
import type { ToldPrice } from "@/lib/view/poolBoard";

/** Longest list of pieces; a budget beyond it is not spent to its end. */
export const MOST_PIECES_BOUGHT = 400;

/** Which part is meant. */
export interface SpendPart {
  readonly partId: string;
  readonly number: string;
  readonly maker: string;
  readonly stage: SupplyStage;
}

/** One piece of the list, in buying order. */
export interface SpendStep extends SpendPart {
  /** Place in the list, from 1. */
  readonly place: number;
  /** The how manieth piece of this part. */
  readonly nth: number;
  readonly siteCode: string;
  readonly price: ToldPrice;
  /** EUR at the budget rate. */
  readonly unitCost: number;
  /** EUR over the horizon this piece avoids. */
  readonly avoids: number;
  readonly spent: number;
  readonly avoided: number;
  /** Chance that no site has one, mean over the horizon: before this piece and after it. */
  readonly noSpare: { readonly before: number; readonly after: number };
  readonly usable: number;
  readonly arrivesOn: IsoDate;
  readonly lastOrderOn: IsoDate | null;
  /** Whether the lead time is not recorded and the class's stands for it. */
  readonly leadAssumed: boolean;
}

/** A part of which nothing is offered, and why. */
export interface NotOffered extends SpendPart {
  readonly why: NoOffer | "no-price";
  /** EUR over the horizon one more piece would avoid; null where it was not worked out. */
  readonly firstAvoids: number | null;
}

export interface SpendList {
  readonly asOf: IsoDate;
  readonly seesAll: boolean;
  readonly budget: number;
  readonly years: number;
  readonly discountRate: number;
  readonly transferHours: number;
  readonly steps: readonly SpendStep[];
  /** Money spent and loss avoided along a longer list than the budget allows. */
  readonly curve: readonly { readonly spent: number; readonly avoided: number }[];
  readonly offered: number;
  readonly notOffered: readonly NotOffered[];
}

/** Reads a budget such as `200000`, `200 000` or `200k`, EUR; null when it is none. */
export function readBudget(typed: unknown): number | null {
  if (typeof typed !== "string") return null;
  const [, digits = "", mark = ""] = /^([\d\s'.,]+)([kKmM])?$/.exec(typed.trim()) ?? [];
  const read = readTypedNumber(digits);
  if (read.kind !== "number") return null;
  const scale = { k: 1_000, m: 1_000_000 }[mark.toLowerCase()] ?? 1;
  const value = Number(read.plain) * scale;
  return Number.isFinite(value) && value <= 1e9 ? value : null;
}

const WHY: Readonly<Record<NotOffered["why"], string>> = {
  "not-orderable": "can no longer be ordered",
  undated: "no sourced supply date: whether it can be ordered is not known",
  retires: "every unit leaves before a new piece would arrive",
  "not-installed": "installed nowhere",
  "no-price": "price not known",
};

/** Why nothing of a part is offered, in words. */
export function notOfferedText(why: NotOffered["why"]): string {
  return WHY[why];
}

const EXAMPLES = 5;

/** The parts left out, counted by reason, each with some of their numbers. */
export function notOfferedSums(
  parts: readonly NotOffered[],
): { readonly why: NotOffered["why"]; readonly parts: number; readonly numbers: readonly string[] }[] {
  const whys = [...new Set(parts.map(({ why }) => why))];
  return whys.map((why) => {
    const own = parts.filter((part) => part.why === why);
    return { why, parts: own.length, numbers: own.slice(0, EXAMPLES).map(({ number }) => number) };
  });
}

/** The pieces that avoid more than they cost stand before this place; null when all do. */
export function firstBelowCost(steps: readonly SpendStep[]): number | null {
  return steps.find(({ avoids, unitCost }) => avoids < unitCost)?.place ?? null;
}

/** How many of each part and site the list buys, the first bought first. */
export interface SpendSum extends SpendPart {
  readonly siteCode: string;
  readonly pieces: number;
  readonly cost: number;
  readonly avoids: number;
}

/** The list put together by part and site. */
export function spendSums(steps: readonly SpendStep[]): SpendSum[] {
  const out = new Map<string, SpendSum>();
  for (const { partId, number, maker, stage, siteCode, unitCost, avoids } of steps) {
    const key = `${partId} ${siteCode}`;
    const sum = out.get(key) ?? { partId, number, maker, stage, siteCode, pieces: 0, cost: 0, avoids: 0 };
    out.set(key, {
      ...{ ...sum, pieces: sum.pieces + 1 },
      ...{ cost: sum.cost + unitCost, avoids: sum.avoids + avoids },
    });
  }
  return [...out.values()];
}
