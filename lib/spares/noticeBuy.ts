import { requireNumber } from "@/lib/kernel/requireNumber";
import { type GammaRate, rateInterval } from "@/lib/reliability/rate";
import { type InstalledSpan, type PoolSupply, unreplenishedExposure } from "@/lib/spares/exposure";
import { lastBuy } from "@/lib/spares/lastBuy";

/** One part at one site, as it must be provided for after the last order. */
export interface NeededPart {
  readonly partId: string;
  readonly siteId: string;
  readonly supply: PoolSupply;
  /** Pieces that work when needed, as expected; counted down to whole pieces when pooled. */
  readonly usable: number;
  /** What one unit too few costs, > 0, and one too many, > 0. */
  readonly underCost: number;
  readonly overCost: number;
}

/** Who shares the stock: all parts of the family at all sites, each part at all sites, or nobody. */
export type Sharing = "family" | "part" | "site";

export interface BuyRates {
  readonly family: GammaRate;
  /** By part; a part that is missing has the family's. */
  readonly parts: ReadonlyMap<string, GammaRate>;
}

export interface BuyCase {
  readonly sharing: Sharing;
  /** Units still go through the repair loop while it is open. */
  readonly repaired: boolean;
  /** Years by which every retrofit comes late, >= 0. */
  readonly slipYears: number;
  /** Units without a retrofit date are provided for over so many years, > 0. */
  readonly horizonYears: number;
}

/** One group of parts that shares stock, with every step of its quantity. */
export interface GroupBuy {
  readonly partIds: readonly string[];
  readonly siteIds: readonly string[];
  readonly units: number;
  /** Unit-years until the units leave, whether anything makes their removals good or not. */
  readonly unitYears: number;
  /** Unit-years whose removals nothing makes good. */
  readonly exposure: number;
  readonly rate: GammaRate;
  /** Units needed on average over that exposure. */
  readonly demand: number;
  readonly usable: number;
  readonly underCost: number;
  readonly overCost: number;
  readonly fractile: number;
  readonly quantity: number;
  /** The same were the rate surely at its 5 % and its 95 % point. */
  readonly low: number;
  readonly high: number;
  /** Chance that stock and buy together suffice. */
  readonly level: number;
}

export interface NoticeBuy {
  readonly groups: readonly GroupBuy[];
  readonly quantity: number;
  readonly low: number;
  readonly high: number;
}

/** A weight, unit-years, at which a gamma is as good as a known rate. */
const KNOWN = 1e9;
const SPAN_LEVEL = 0.9;

const keyOf = ({ partId, siteId }: NeededPart, sharing: Sharing): string =>
  sharing === "family" ? "" : sharing === "part" ? partId : JSON.stringify([partId, siteId]);

/** When a unit leaves: at its retrofit, which may slip, at the latest when the horizon ends. */
function leaving(span: InstalledSpan, { slipYears, horizonYears }: BuyCase): InstalledSpan {
  return { ...span, to: span.to === null ? horizonYears : span.to + slipYears };
}

function exposureOf({ supply }: NeededPart, asked: BuyCase): number {
  const installed = supply.installed.map((span) => leaving(span, asked));
  const end = Math.max(0, ...installed.map(({ to }) => to ?? 0));
  const repair = asked.repaired ? supply.repair : null;
  // What is on its way at the end still comes, so the end is looked at from beyond it.
  const beyond = end + Math.max(supply.leadTime, repair?.turnaround ?? 0);
  return unreplenishedExposure({ ...supply, installed, repair }, beyond);
}

const unitsOf = ({ supply }: NeededPart) => supply.installed.reduce((sum, span) => sum + span.units, 0);

function unitYearsOf({ supply }: NeededPart, asked: BuyCase): number {
  return supply.installed.reduce((sum, span) => {
    const { from, to, units } = leaving(span, asked);
    return sum + units * Math.max(0, (to ?? from) - from);
  }, 0);
}

/** Mean of a cost over the units it stands for. */
function shared(parts: readonly NeededPart[], cost: (part: NeededPart) => number): number {
  const all = parts.reduce((sum, part) => sum + unitsOf(part), 0);
  if (all === 0) return parts.reduce((sum, part) => sum + cost(part), 0) / parts.length;
  return parts.reduce((sum, part) => sum + unitsOf(part) * cost(part), 0) / all;
}

/** Units of a part at its site needed on average over its own exposure. */
export function neededAt(part: NeededPart, rate: GammaRate, asked: BuyCase): number {
  return (rate.a / rate.b) * exposureOf(part, asked);
}

function groupBuy(parts: readonly NeededPart[], rate: GammaRate, asked: BuyCase): GroupBuy {
  const exposure = parts.reduce((sum, part) => sum + exposureOf(part, asked), 0);
  const usable = Math.floor(parts.reduce((sum, part) => sum + part.usable, 0) + 1e-9);
  const underCost = shared(parts, (part) => part.underCost);
  const overCost = shared(parts, (part) => part.overCost);
  const buy = ({ a, b }: GammaRate) => lastBuy({ a, b, exposure, usable, underCost, overCost });
  const { low, high } = rateInterval(rate, SPAN_LEVEL);
  const at = (known: number) => buy({ a: known * KNOWN, b: KNOWN }).quantity;
  return {
    partIds: [...new Set(parts.map(({ partId }) => partId))],
    siteIds: [...new Set(parts.map(({ siteId }) => siteId))],
    units: parts.reduce((sum, part) => sum + unitsOf(part), 0),
    unitYears: parts.reduce((sum, part) => sum + unitYearsOf(part, asked), 0),
    ...{ exposure, rate, demand: (rate.a / rate.b) * exposure, usable, underCost, overCost },
    ...buy(rate),
    low: at(low),
    high: at(high),
  };
}

/**
 * How many to buy at the last chance, for all units until their own retrofits, every step kept.
 *
 * By group that shares stock: exposure = sum of the parts' unit-years not made good by orders or repair until their
 * units leave; quantity = smallest Q with F(usable + Q) >= C_u / (C_u + C_o) (`lastBuy`); costs of a group are means
 * weighted by units. `low` and `high` take the rate as known at its 5 % and 95 % points, so they hold the spread of the
 * rate and not that of the count. The sums are over the groups.
 *
 * @throws {RangeError} naming the argument and its value.
 */
export function noticeBuy(parts: readonly NeededPart[], rates: BuyRates, asked: BuyCase): NoticeBuy {
  requireNumber(asked.slipYears, "slipYears", { least: 0 });
  requireNumber(asked.horizonYears, "horizonYears", { least: 0, open: true });
  for (const { usable } of parts) requireNumber(usable, "usable", { least: 0 });
  const byKey = new Map<string, NeededPart[]>();
  for (const part of parts) {
    const key = keyOf(part, asked.sharing);
    byKey.set(key, [...(byKey.get(key) ?? []), part]);
  }
  const groups = [...byKey.values()].map((own) => {
    const rate = asked.sharing === "family" ? rates.family : rates.parts.get(own[0]?.partId ?? "");
    return groupBuy(own, rate ?? rates.family, asked);
  });
  const sum = (of: "quantity" | "low" | "high") => groups.reduce((all, group) => all + group[of], 0);
  return { groups, quantity: sum("quantity"), low: sum("low"), high: sum("high") };
}
