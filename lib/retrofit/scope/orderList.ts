import { addDays, type IsoDate } from "@/lib/kernel/isoDate";
import type { Norm } from "@/lib/retrofit/costNorm";
import type { AxisScope } from "@/lib/retrofit/scope/axisScope";
import { endedItems, type ScopeCounts } from "@/lib/retrofit/scope/scopeCounts";
import type { PartFact, ScopeFacts, ScopeItem } from "@/lib/retrofit/scope/scopeFacts";
import type { PlainNorms } from "@/lib/retrofit/scope/scopeNorms";

/** A part to buy; `part` null is not chosen yet or not on record. */
export interface OrderRow {
  readonly label: string;
  readonly part: PartFact | null;
  readonly quantity: Norm;
  /** Order to receipt, weeks, the careful figure where there is one; null is not known. */
  readonly leadWeeks: number | null;
}

const DAYS_PER_WEEK = 7;

/** The careful lead time of a part, else the usual one. */
export const leadOf = (part: PartFact | null): number | null => part?.leadWeeksP80 ?? part?.leadWeeks ?? null;

/** What has to be bought for the converted axes; drives by part, the rest by class. */
export function orderList(facts: ScopeFacts, axes: readonly AxisScope[], counts: ScopeCounts): OrderRow[] {
  const rows: OrderRow[] = [
    ...driveRows(axes),
    row("Feedback adapters", null, counts.adapters),
    row("Motors, once a competent engineer has sized them", null, counts.motors),
    row("Controllers", followerOf(facts, axes, "controller"), counts.swapped),
    row("I/O racks", followerOf(facts, axes, "io"), counts.racks),
    row("Operator panels", followerOf(facts, axes, "hmi"), flat(counts.panels)),
    row("Cable sets", null, flat(counts.axes)),
  ];
  return rows.filter(({ quantity }) => quantity[2] > 0);
}

const flat = (value: number): Norm => [value, value, value];
const row = (label: string, part: PartFact | null, quantity: Norm): OrderRow => ({
  ...{ label, part, quantity },
  leadWeeks: leadOf(part),
});

function driveRows(axes: readonly AxisScope[]): OrderRow[] {
  const byId = new Map<string, { part: PartFact; count: number }>();
  for (const { successor } of axes) {
    if (!successor) continue;
    const { part } = successor;
    byId.set(part.id, { part, count: (byId.get(part.id)?.count ?? 0) + 1 });
  }
  const without = axes.filter(({ successor }) => successor === null).length;
  return [
    ...[...byId.values()]
      .sort((a, b) => (a.part.number < b.part.number ? -1 : 1))
      .map(({ part, count }) => row("Drive", part, flat(count))),
    row("Drives not chosen: none on record follows the old one", null, flat(without)),
  ];
}

/** The one part that follows all units of a class in the converted machines; null when it is none or not one. */
function followerOf(
  facts: ScopeFacts,
  axes: readonly AxisScope[],
  itemClass: ScopeItem["itemClass"],
): PartFact | null {
  const ended = endedItems(facts, axes, itemClass);
  const ids = new Set(
    ended.flatMap(({ part }) =>
      facts.successors.filter(({ partId }) => partId === part?.id).map(({ successorId }) => successorId),
    ),
  );
  const [only, ...others] = facts.parts.filter(({ id, itemClass: own }) => ids.has(id) && own === itemClass);
  return others.length === 0 ? (only ?? null) : null;
}

/**
 * Last day to start buying: day needed on site − lead time − transport − quote, approval and order − receiving and
 * setting up. Weeks are taken whole, upwards.
 *
 * @returns null when the lead time is not known.
 */
export function orderBy(neededOn: IsoDate, leadWeeks: number | null, plain: PlainNorms): IsoDate | null {
  if (leadWeeks === null) return null;
  const weeks = leadWeeks + plain.transportWeeks + plain.purchaseWeeks + plain.incomingWeeks;
  return addDays(neededOn, -Math.ceil(weeks * DAYS_PER_WEEK));
}
