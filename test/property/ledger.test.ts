import {
  array,
  assert,
  constantFrom,
  integer,
  option,
  property,
  record,
  shuffledSubarray,
  tuple,
} from "fast-check";
import { describe, test } from "vitest";
import { placesOf } from "@/lib/kernel/currency";
import { sumAmounts } from "@/lib/kernel/money";
import { type Ledger, type LedgerEntry, type LedgerInput, ledger } from "@/lib/projects/ledger";
import { costClasses } from "@/lib/schema/costClass";

const ASOF = "2026-11-30";

/** Amounts as whole minor units, so that the sums can be checked without the decimals of the product. */
const units = integer({ min: 0, max: 1e9 });
const text = (minor: number, places: number) => {
  const digits = String(Math.abs(minor)).padStart(places + 1, "0");
  const cut = digits.length - places;
  return `${minor < 0 ? "-" : ""}${digits.slice(0, cut)}${places === 0 ? "" : `.${digits.slice(cut)}`}`;
};
const minor = (amount: string) => Number(amount.replace(".", ""));
const costClass = constantFrom(...costClasses);

const made = tuple(
  constantFrom("JPY", "EUR", "KWD", "UYW"),
  array(record({ costClass, units }), { maxLength: 6 }),
  array(
    record({
      source: constantFrom("contingency" as const, "new_money" as const),
      state: constantFrom("asked" as const, "approved" as const, "declined" as const),
      amounts: array(record({ costClass, units: integer({ min: -1e6, max: 1e6 }) }), { maxLength: 3 }),
    }),
    { maxLength: 5 },
  ),
  array(
    record({
      kind: constantFrom("committed" as const, "actual" as const),
      units,
      costClass: option(costClass),
      order: option(integer({ min: 0, max: 9 })),
      late: constantFrom(false, false, true),
    }),
    { maxLength: 14 },
  ),
  array(record({ costClass, units }), { maxLength: 6 }),
).map(([currency, items, changes, entries, toOrder]): LedgerInput => {
  const places = placesOf(currency);
  const classes = <T extends { readonly costClass: string }>(list: readonly T[]) => [
    ...new Map(list.map((one) => [one.costClass, one])).values(),
  ];
  const split = classes(items).map((one) => ({ costClass: one.costClass, amount: text(one.units, places) }));
  return {
    budget:
      split.length === 0
        ? text(1000, places)
        : sumAmounts(
            split.map(({ amount }) => amount),
            places,
          ),
    items: split,
    changes: changes.map(({ source, state, amounts }) => ({
      ...{ source, state, askedOn: "2026-01-01", decidedOn: state === "asked" ? null : "2026-02-01" },
      amounts: classes(amounts).map((one) => ({ costClass: one.costClass, amount: text(one.units, places) })),
    })),
    entries: entries.map(
      (one, i): LedgerEntry => ({
        kind: one.kind,
        amount: text(one.units, places),
        spentOn: one.late ? "2027-01-01" : "2026-03-01",
        reference: `R${i}`,
        orderReference: one.kind === "actual" && one.order !== null ? `R${one.order}` : null,
        costClass: one.costClass,
      }),
    ),
    toOrder: classes(toOrder).map((one) => ({
      ...{ costClass: one.costClass, amount: text(one.units, places), statedOn: "2026-05-01" },
    })),
    places,
  };
});

const sums = ["original", "changed", "budget", "ordered", "paid", "open", "bound"] as const;
const all = ({ lines, total }: Ledger) => [...lines, total];

describe("the ledger of a project", () => {
  test("classes add up to the total, to the last minor unit", () => {
    assert(
      property(made, (input) => {
        const { lines, total } = ledger(input, ASOF);
        return sums.every(
          (key) => lines.reduce((sum, line) => sum + minor(line[key]), 0) === minor(total[key]),
        );
      }),
    );
  });
  test("budget and bound of each line are their parts; nothing open is below zero", () => {
    assert(
      property(made, (input) =>
        all(ledger(input, ASOF)).every(
          (line) =>
            minor(line.budget) === minor(line.original) + minor(line.changed) &&
            minor(line.bound) === minor(line.paid) + minor(line.open) &&
            minor(line.open) >= 0 &&
            minor(line.open) <= minor(line.ordered),
        ),
      ),
    );
  });
  test("the order of entries, changes and classes does not matter", () => {
    const shuffled = made.chain((input) =>
      tuple(
        shuffledSubarray([...input.entries], { minLength: input.entries.length }),
        shuffledSubarray([...input.changes], { minLength: input.changes.length }),
        shuffledSubarray([...input.items], { minLength: input.items.length }),
      ).map(([entries, changes, items]) => [input, { ...input, entries, changes, items }] as const),
    );
    assert(
      property(shuffled, ([input, other]) => {
        return JSON.stringify(ledger(input, ASOF)) === JSON.stringify(ledger(other, ASOF));
      }),
    );
  });
  test("an invoice takes from its order at most what is open, and is never lost", () => {
    const withInvoice = tuple(made, units).filter(([{ entries }]) => entries.length > 0);
    assert(
      property(withInvoice, ([input, amount]) => {
        const order = input.entries[0]?.reference ?? "";
        const before = ledger(input, ASOF).total;
        const invoice: LedgerEntry = {
          ...{ kind: "actual", amount: text(amount, input.places), spentOn: "2026-04-01" },
          ...{ reference: "new", orderReference: order, costClass: null },
        };
        const after = ledger({ ...input, entries: [...input.entries, invoice] }, ASOF).total;
        const taken = minor(before.open) - minor(after.open);
        return minor(after.paid) === minor(before.paid) + amount && taken >= 0 && taken <= amount;
      }),
    );
  });
  test("a change from contingency leaves the budget as it is; only approved new money raises it", () => {
    assert(
      property(made, (input) => {
        const fresh = input.changes
          .filter(({ state, source }) => state === "approved" && source === "new_money")
          .flatMap(({ amounts }) => amounts)
          .reduce((sum, { amount }) => sum + minor(amount), 0);
        return minor(ledger(input, ASOF).total.budget) === minor(input.budget) + fresh;
      }),
    );
  });
});
