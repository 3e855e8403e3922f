import type { IsoDate } from "@/lib/kernel/isoDate";
import { requireNumber } from "@/lib/kernel/requireNumber";
import type { Norm } from "@/lib/retrofit/costNorm";
import type { AxisScope } from "@/lib/retrofit/scope/axisScope";
import type { ScopeCounts } from "@/lib/retrofit/scope/scopeCounts";
import type { ScopeNorms } from "@/lib/retrofit/scope/scopeNorms";
import { meanOf, sum, times } from "@/lib/retrofit/scope/spread";

/** One kind of work or goods: quantity times norm. */
export interface MoneyRow {
  readonly label: string;
  readonly kind: "hours" | "goods";
  readonly quantity: Norm;
  /** Person-hours or EUR a piece. */
  readonly each: Norm;
  /** Quantity times each: person-hours or EUR. */
  readonly total: Norm;
  /** Where `each` comes from. */
  readonly source: "norm" | "list price";
  /** Day of the list price; null is not known, or a norm. */
  readonly pricedOn: IsoDate | null;
}

export interface ScopeMoney {
  readonly rows: readonly MoneyRow[];
  readonly hours: Norm;
  /** Hours at the hourly rate, EUR. */
  readonly labour: Norm;
  readonly goods: Norm;
  /** (labour + goods) times (1 + contingency), EUR. */
  readonly cost: Norm;
  readonly mean: number;
}

const flat = (value: number): Norm => [value, value, value];

const row =
  (kind: MoneyRow["kind"]) =>
  (label: string, quantity: number | Norm, each: Norm): MoneyRow => {
    const counted = typeof quantity === "number" ? flat(quantity) : quantity;
    return {
      ...{ label, kind, quantity: counted, each, total: times(each, counted) },
      ...{ source: "norm", pricedOn: null },
    };
  };
export const hours = row("hours");
const goods = row("goods");

/** Person-hours by kind. */
export function hourRows({ axes, machines }: ScopeCounts, { spans }: ScopeNorms): MoneyRow[] {
  return [
    hours("Survey, by axis", axes, spans.surveyPerAxis),
    hours("Survey, by machine", machines, spans.surveyPerMachine),
    hours("Engineering, by axis", axes, spans.engineeringPerAxis),
    hours("Engineering, by machine", machines, spans.engineeringPerMachine),
    hours("Panel work, by axis", axes, spans.panelPerAxis),
    hours("Taking out and fitting, by axis", axes, spans.installPerAxis),
    hours("Commissioning, by axis", axes, spans.commissioningPerAxis),
    hours("Safety validation, by machine", machines, spans.validationPerMachine),
  ];
}

/** What opens the way for new drives: controllers swapped or raised, and the racks that lose their bus by it. */
export function controllerRows({ swapped, raised, racks }: ScopeCounts, { spans }: ScopeNorms): MoneyRow[] {
  return [
    hours("Converting programs of swapped controllers", swapped, spans.conversionPerController),
    hours("Raising firmware", raised, spans.raisePerController),
    goods("Controllers with licences", swapped, spans.controller),
    goods("I/O racks", racks, spans.ioRack),
  ];
}

/** Goods by kind; a drive with a price on record takes it, the others the norm. */
export function goodsRows(
  counts: ScopeCounts,
  axes: readonly AxisScope[],
  { spans }: ScopeNorms,
): MoneyRow[] {
  return [
    ...driveRows(axes, spans.drive),
    goods("Cable sets", counts.axes, spans.cablesPerAxis),
    goods("Feedback adapters", counts.adapters, spans.adapter),
    goods("Motors, a place in the budget until they are sized", counts.motors, spans.motor),
    goods("Operator panels", counts.panels, spans.hmi),
  ];
}

function driveRows(axes: readonly AxisScope[], norm: Norm): MoneyRow[] {
  const byNumber = new Map<string, { count: number; price: number; pricedOn: string | null }>();
  let unpriced = 0;
  for (const { successor } of axes) {
    const price = successor?.part.price ?? null;
    if (!successor || price === null) unpriced += 1;
    else {
      const { number, pricedOn } = successor.part;
      byNumber.set(number, { price, pricedOn, count: (byNumber.get(number)?.count ?? 0) + 1 });
    }
  }
  const priced = [...byNumber]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([number, { count, price, pricedOn }]) => ({
      ...goods(`Drive ${number}`, count, flat(requireNumber(price, number, { least: 0 }))),
      source: "list price" as const,
      pricedOn,
    }));
  return unpriced === 0 ? priced : [...priced, goods("Drives without a price on record", unpriced, norm)];
}

/** (hours × hourly rate + goods) × (1 + contingency), all low, all typical or all high together, EUR. */
export function addUp(rows: readonly MoneyRow[], { spans }: ScopeNorms): ScopeMoney {
  const of = (kind: MoneyRow["kind"]) =>
    sum(rows.filter((one) => one.kind === kind).map(({ total }) => total));
  const labour = times(of("hours"), spans.hourlyRate);
  const [low, typical, high] = spans.contingency;
  const cost = times(sum([labour, of("goods")]), [1 + low, 1 + typical, 1 + high]);
  return { rows, hours: of("hours"), labour, goods: of("goods"), cost, mean: meanOf(cost) };
}
