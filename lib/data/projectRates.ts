import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { scopeOf } from "@/lib/access/policy";
import { change, type Transaction } from "@/lib/data/change";
import { database } from "@/lib/data/client";
import { isCurrency } from "@/lib/kernel/currency";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { crossRate } from "@/lib/kernel/money";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { SetMonthRate } from "@/lib/schema/projectMoney";
import type { RateTable, StatedRate } from "@/lib/view/projectRates";
import type { Prisma } from "@/prisma/generated/client";

const notAllowed: Refusal = {
  code: "forbidden",
  reason: "Rates hold for all sites, so only somebody who may plan at all of them states them.",
};
const conflict: Refusal = {
  code: "conflict",
  reason:
    "Somebody else stated this rate since you opened the page. Nothing was changed; load the page again.",
};
const unknownCurrency: Refusal = {
  code: "missing",
  reason: "There is no budget rate for this currency. Load it with the sites that use it first.",
};

/** Budget rates and, by month, what finance booked at; newest month first. */
export async function readRateTable(actor: Actor): Promise<RateTable> {
  const [budget, months] = await Promise.all([
    database().currencyRate.findMany({ orderBy: { currency: "asc" } }),
    database().monthRate.findMany({ orderBy: [{ month: "desc" }, { currency: "asc" }] }),
  ]);
  return {
    mayState: scopeOf(actor.grants, "plan:write") === "all",
    budget: budget.map(({ currency, perEuro, validFrom, source }) => ({
      ...{ currency, perEuro: perEuro.toFixed(), on: dayOf(validFrom), source: source ?? "not recorded" },
    })),
    months: months.map(({ currency, perEuro, month, source }) => ({
      ...{ currency, perEuro: perEuro.toFixed(), on: dayOf(month), source },
    })),
  };
}

/** States the rate of a month, or takes it away, if it still is what the person saw; swap both to undo. */
export async function setMonthRate(
  actor: Actor,
  { currency, month, seen, wanted }: SetMonthRate,
): Promise<Result<null, Refusal>> {
  if (scopeOf(actor.grants, "plan:write") !== "all") return err(notAllowed);
  return change(actor, async (tx, record) => {
    if ((await tx.currencyRate.count({ where: { currency } })) === 0) return err(unknownCurrency);
    const key = { currency, month: new Date(`${month}-01T00:00:00Z`) };
    const data = wanted && { ...wanted, recordedBy: actor.name };
    if ((await writeSeen(tx, key, { seen, data })) === 0) return err(conflict);
    record({
      ...{ deed: "rate:month", entity: "MonthRate", entityId: `${currency} ${month}` },
      ...(seen === null ? {} : { before: { perEuro: seen } }),
      ...(wanted === null ? {} : { after: wanted }),
    });
    return ok(null);
  });
}

interface SeenRate {
  readonly seen: string | null;
  readonly data: Omit<Prisma.MonthRateCreateManyInput, "currency" | "month"> | null;
}

/** Adds, changes or takes away what still is as seen; answers how many rows it was. */
async function writeSeen(
  tx: Transaction,
  key: { readonly currency: string; readonly month: Date },
  { seen, data }: SeenRate,
): Promise<number> {
  const where = { ...key, perEuro: seen ?? "0" };
  if (data === null) return (await tx.monthRate.deleteMany({ where })).count;
  if (seen !== null) return (await tx.monthRate.updateMany({ where, data })).count;
  return (await tx.monthRate.createMany({ data: [{ ...key, ...data }], skipDuplicates: true })).count;
}

/** A rate between two currencies as it was stated. */
export interface CrossRate {
  /** Units of the wanted currency for one of the own; ten places. */
  readonly rate: string;
  /** First day of the month or of the budget rate. */
  readonly ratedOn: IsoDate;
  readonly source: string;
}

/** Rates between currencies, for many entries at once. */
export type Rates = (own: string, wanted: string, on: IsoDate) => CrossRate | null;

/** Rates as stated: those of an entry's month where both are known, else the budget rates; null where neither is. */
export async function loadRates(_actor: Actor, tx: Transaction): Promise<Rates> {
  const budget = await tx.currencyRate.findMany();
  const months = await tx.monthRate.findMany();
  const budgetOf = new Map(
    budget.map((one) => [one.currency, stated(one.perEuro.toFixed(), one.validFrom, one.source)]),
  );
  const monthOf = new Map(
    months.map((one) => [
      `${one.currency} ${dayOf(one.month)}`,
      stated(one.perEuro.toFixed(), one.month, one.source),
    ]),
  );
  const euro: Omit<StatedRate, "currency"> = { perEuro: "1", on: "1999-01-01", source: "" };
  return (own, wanted, on) => {
    if (!(isCurrency(own) && isCurrency(wanted))) return null;
    const first = `${on.slice(0, 7)}-01`;
    const pick = (find: (code: string) => Omit<StatedRate, "currency"> | undefined) =>
      [own, wanted].map((code) => (code === "EUR" ? euro : find(code)));
    const [monthOwn, monthWanted] = pick((code) => monthOf.get(`${code} ${first}`));
    if (monthOwn && monthWanted) return crossed("month rate", monthOwn, monthWanted);
    const [budgetOwn, budgetWanted] = pick((code) => budgetOf.get(code));
    return budgetOwn && budgetWanted ? crossed("budget rate", budgetOwn, budgetWanted) : null;
  };
}

function stated(perEuro: string, on: Date, source: string | null): Omit<StatedRate, "currency"> {
  return { perEuro, on: dayOf(on), source: source ?? "source not recorded" };
}

function crossed(
  kind: string,
  own: Omit<StatedRate, "currency">,
  wanted: Omit<StatedRate, "currency">,
): CrossRate {
  const [, latest = own.on] = [own.on, wanted.on].sort();
  const sources = [...new Set([own.source, wanted.source])].filter((source) => source !== "");
  return {
    rate: crossRate(wanted.perEuro, own.perEuro),
    ratedOn: latest,
    source: [kind, ...sources].join(", "),
  };
}

const dayOf = (date: Date): IsoDate => date.toISOString().slice(0, 10);
