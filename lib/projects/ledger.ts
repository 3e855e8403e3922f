import type { IsoDate } from "@/lib/kernel/isoDate";
import { type Amount, compareAmounts, subtractAmounts, sumAmounts } from "@/lib/kernel/money";
import { type CostClass, costClasses } from "@/lib/schema/costClass";

export interface ClassAmount {
  readonly costClass: CostClass;
  readonly amount: Amount;
}

/** An order, or an invoice that was paid; amounts in the project's currency. */
export interface LedgerEntry {
  readonly kind: "committed" | "actual";
  readonly amount: Amount;
  readonly spentOn: IsoDate;
  readonly reference: string;
  /** Number of the order an invoice is for; null is not known. */
  readonly orderReference: string | null;
  /** Null is not sorted. */
  readonly costClass: CostClass | null;
}

export interface BudgetChange {
  readonly source: "contingency" | "new_money";
  readonly state: "asked" | "approved" | "declined";
  readonly askedOn: IsoDate;
  readonly decidedOn: IsoDate | null;
  readonly amounts: readonly ClassAmount[];
}

export interface LedgerInput {
  /** Original budget. */
  readonly budget: Amount;
  /** The original budget by class; empty is not split. */
  readonly items: readonly ClassAmount[];
  readonly changes: readonly BudgetChange[];
  readonly entries: readonly LedgerEntry[];
  /** What each class still needs beyond what is paid and ordered, as somebody stated it. */
  readonly toOrder: readonly (ClassAmount & { readonly statedOn: IsoDate })[];
  /** Places of the project's currency. */
  readonly places: number;
}

/** One class of the ledger, or their sum; amounts in the project's currency. */
export interface LedgerLine {
  readonly original: Amount;
  /** Approved changes; below zero gives away. */
  readonly changed: Amount;
  /** Original and approved changes together. */
  readonly budget: Amount;
  /** All orders, paid or not. */
  readonly ordered: Amount;
  readonly paid: Amount;
  /** Of the orders, what no invoice has taken yet; never below zero. */
  readonly open: Amount;
  /** Paid and still open together. */
  readonly bound: Amount;
  /** Null is not stated. */
  readonly toOrder: Amount | null;
  /** Bound and to order: what it costs in the end; null while something is not stated. */
  readonly forecast: Amount | null;
}

export interface ClassLine extends LedgerLine {
  /** Null is money nobody has sorted. */
  readonly costClass: CostClass | null;
}

export interface Ledger {
  /** Classes with money in them, in order. */
  readonly lines: readonly ClassLine[];
  readonly total: LedgerLine;
  /** Classes with money whose rest nobody has stated; while there are any the forecast is not known. */
  readonly unstated: readonly (CostClass | null)[];
  /** Contingency that no approved change and no entry has taken; null without a budget by class. */
  readonly contingencyLeft: Amount | null;
  /** New money asked for and not decided, and the same from contingency. */
  readonly askedNew: Amount;
  readonly askedOfContingency: Amount;
  /** Orders whose invoices are above them, and by how much. */
  readonly overInvoiced: readonly { readonly reference: string; readonly by: Amount }[];
  /** Invoices for an order that is not in the ledger. */
  readonly withoutOrder: readonly string[];
}

/**
 * What a project was given, has bound and still needs, class by class, as known on a day.
 *
 * budget = original + approved changes; a change from contingency lowers that class by what it gives. Of an order
 * max(0, order - its invoices) is still open. bound = paid + open; forecast = bound + to order.
 *
 * @param asOf Entries, decisions and statements of later days are left out.
 * @throws {RangeError} naming the text that is not an amount.
 */
export function ledger(input: LedgerInput, asOf: IsoDate): Ledger {
  const { places, items } = input;
  const entries = input.entries.filter(({ spentOn }) => spentOn <= asOf);
  const orders = openOrders(entries, places);
  const approved = input.changes.filter(
    ({ state, decidedOn }) => state === "approved" && decidedOn !== null && decidedOn <= asOf,
  );
  const moves = approved.flatMap((change) => movesOf(change, places));
  const stated = input.toOrder.filter(({ statedOn }) => statedOn <= asOf);
  const keys = [...costClasses, null];
  const all = keys.map((costClass): ClassLine => {
    const own = (list: readonly ClassAmount[]) => list.filter((one) => one.costClass === costClass);
    const original = costClass === null && items.length === 0 ? [input.budget] : amountsOf(own(items));
    const sorted = entries.filter((entry) => classOf(entry, orders) === costClass);
    const line = bindings(sorted, orders, places);
    const toOrder = restOf(costClass, { stated: own(stated), split: items.length > 0, places });
    return {
      costClass,
      ...sumLine({ original, changed: amountsOf(own(moves)), places }),
      ...line,
      toOrder,
      forecast: toOrder === null ? null : sumAmounts([line.bound, toOrder], places),
    };
  });
  const lines = all.filter(hasMoney);
  const unstated = lines.filter(({ toOrder }) => toOrder === null).map(({ costClass }) => costClass);
  const contingency = all.find(({ costClass }) => costClass === "contingency");
  return {
    ...{ lines, total: totalOf(lines, places), unstated },
    contingencyLeft:
      items.length === 0 || !contingency
        ? null
        : subtractAmounts(contingency.budget, contingency.bound, places),
    askedNew: askedFrom("new_money", { input, asOf }),
    askedOfContingency: askedFrom("contingency", { input, asOf }),
    overInvoiced: [...orders.values()].flatMap(({ reference, over }) =>
      compareAmounts(over, "0") > 0 ? [{ reference, by: over }] : [],
    ),
    withoutOrder: entries
      .filter(({ orderReference }) => orderReference !== null && !orders.has(orderReference))
      .map(({ reference }) => reference)
      .sort(),
  };
}

/** Orders by their number. */
type OpenOrders = ReadonlyMap<string, OpenOrder>;

interface OpenOrder {
  readonly reference: string;
  readonly costClass: CostClass | null;
  readonly open: Amount;
  /** What its invoices are above it. */
  readonly over: Amount;
}

function openOrders(entries: readonly LedgerEntry[], places: number): OpenOrders {
  const invoiced = new Map<string, Amount[]>();
  for (const { kind, orderReference, amount } of entries) {
    if (kind !== "actual" || orderReference === null) continue;
    const known = invoiced.get(orderReference);
    if (known) known.push(amount);
    else invoiced.set(orderReference, [amount]);
  }
  const zero = sumAmounts([], places);
  const orders = entries
    .filter(({ kind }) => kind === "committed")
    .map(({ reference, costClass, amount }): OpenOrder => {
      const rest = subtractAmounts(amount, sumAmounts(invoiced.get(reference) ?? [], places), places);
      const owed = compareAmounts(rest, zero) > 0;
      return {
        ...{ reference, costClass },
        open: owed ? rest : zero,
        over: owed ? zero : subtractAmounts(zero, rest, places),
      };
    })
    .sort((a, b) => (a.reference < b.reference ? -1 : 1));
  return new Map(orders.map((order) => [order.reference, order]));
}

/** An invoice nobody sorted belongs where its order does. */
function classOf({ costClass, orderReference }: LedgerEntry, orders: OpenOrders): CostClass | null {
  return costClass ?? orders.get(orderReference ?? "")?.costClass ?? null;
}

const amountsOf = (list: readonly ClassAmount[]): Amount[] => list.map(({ amount }) => amount);

/** What an approved change does to each class; from contingency it takes there what it gives elsewhere. */
function movesOf({ source, amounts }: BudgetChange, places: number): ClassAmount[] {
  if (source === "new_money") return [...amounts];
  const given = sumAmounts(amountsOf(amounts), places);
  return [...amounts, { costClass: "contingency", amount: subtractAmounts("0", given, places) }];
}

function bindings(sorted: readonly LedgerEntry[], orders: OpenOrders, places: number) {
  const sum = (kind: LedgerEntry["kind"]) =>
    sumAmounts(
      sorted.filter((one) => one.kind === kind).map(({ amount }) => amount),
      places,
    );
  const open = sumAmounts(
    sorted.flatMap(({ kind, reference }) =>
      kind === "committed" ? (orders.get(reference)?.open ?? []) : [],
    ),
    places,
  );
  const paid = sum("actual");
  return { ordered: sum("committed"), paid, open, bound: sumAmounts([paid, open], places) };
}

/** What is left of contingency is not spent unless somebody says so; nothing can be stated for unsorted money. */
function restOf(
  costClass: CostClass | null,
  given: { readonly stated: readonly ClassAmount[]; readonly split: boolean; readonly places: number },
): Amount | null {
  const { stated, split, places } = given;
  const [statement] = stated;
  if (statement) return sumAmounts([statement.amount], places);
  if (costClass === "contingency") return sumAmounts([], places);
  return costClass === null && split ? sumAmounts([], places) : null;
}

function sumLine(given: {
  readonly original: readonly Amount[];
  readonly changed: readonly Amount[];
  readonly places: number;
}) {
  const { places } = given;
  const original = sumAmounts(given.original, places);
  const changed = sumAmounts(given.changed, places);
  return { original, changed, budget: sumAmounts([original, changed], places) };
}

const hasMoney = ({ original, changed, ordered, paid, toOrder }: ClassLine): boolean =>
  [original, changed, ordered, paid, toOrder ?? "0"].some((one) => compareAmounts(one, "0") !== 0);

function totalOf(lines: readonly ClassLine[], places: number): LedgerLine {
  const sum = (key: Exclude<keyof LedgerLine, "toOrder" | "forecast">) =>
    sumAmounts(
      lines.map((line) => line[key]),
      places,
    );
  const sumKnown = (key: "toOrder" | "forecast") => {
    const known = lines.flatMap((line) => line[key] ?? []);
    return known.length < lines.length ? null : sumAmounts(known, places);
  };
  return {
    ...{ original: sum("original"), changed: sum("changed"), budget: sum("budget") },
    ...{ ordered: sum("ordered"), paid: sum("paid"), open: sum("open"), bound: sum("bound") },
    ...{ toOrder: sumKnown("toOrder"), forecast: sumKnown("forecast") },
  };
}

/** What is asked for from one source on the day and not decided by it. */
function askedFrom(
  source: BudgetChange["source"],
  { input, asOf }: { readonly input: LedgerInput; readonly asOf: IsoDate },
): Amount {
  const waiting = input.changes.filter(
    (one) => one.source === source && one.askedOn <= asOf && (one.decidedOn === null || one.decidedOn > asOf),
  );
  return sumAmounts(
    waiting.flatMap(({ amounts }) => amountsOf(amounts)),
    input.places,
  );
}
