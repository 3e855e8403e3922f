import { randomUUID } from "node:crypto";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { database } from "@/lib/data/client";
import { readProject } from "@/lib/data/project";
import { splitBudget, stateRest } from "@/lib/data/projectBudget";
import { removeProject } from "@/lib/data/projectChange";
import { askChange, decideChange, withdrawChange } from "@/lib/data/projectChangeOrder";
import { addCost } from "@/lib/data/projectCost";
import { readRateTable, setMonthRate } from "@/lib/data/projectRates";
import type { AddCost } from "@/lib/schema/projectMoney";
import { projectFigures } from "@/lib/view/project";
import { type FreshDatabase, freshDatabase } from "../support/database";
import { asOf, makeTwoSites, personWith, type TwoSites } from "../support/twoSites";

let made: FreshDatabase;
let world: TwoSites;
let projectId = "";
const day = (text: string) => new Date(`${text}T00:00:00Z`);

beforeAll(async () => {
  made = await freshDatabase("project_money");
  world = await makeTwoSites();
  await database().setting.create({ data: { key: "asOf", value: asOf } });
  await database().currencyRate.create({
    data: { currency: "JPY", perEuro: 162.5, validFrom: day("2026-01-01") },
  });
  const project = await database().project.create({
    data: {
      ...{ siteId: world.south, lineId: world.lines["SUD-01"] ?? "", code: "SUD-01-R1", name: "Retrofit" },
      ...{ currency: "PLN", budget: "1000000.00" },
    },
  });
  projectId = project.id;
});

afterAll(() => made.close());

const engineer = () => personWith("engineer", world.south);
const approver = () => personWith("approver", world.south);

async function file() {
  const project = await readProject(engineer(), "SUD-01-R1");
  if (!project) throw new Error("no project");
  return project;
}
const book = async () => projectFigures(await file(), asOf).ledger;

const entry = (given: Partial<AddCost>): AddCost => ({
  ...{ projectId, kind: "committed", amount: "610000.00", currency: null, spentOn: "2026-11-06" },
  ...{ text: "Motors", reference: "PO-1", costClass: "drives", orderReference: null },
  ...given,
});

describe("the original budget", () => {
  const items = [
    { costClass: "drives" as const, amount: "700000.00" },
    { costClass: "installation" as const, amount: "200000.00" },
    { costClass: "contingency" as const, amount: "100000.00" },
  ];
  it("is split once, into parts that are the whole to the last unit", async () => {
    const short = await splitBudget(engineer(), { projectId, items: items.slice(0, 2) });
    expect(short).toMatchObject({ error: { code: "invalid", reason: expect.stringContaining("900") } });
    expect((await splitBudget(engineer(), { projectId, items })).ok).toBe(true);
    expect(await splitBudget(engineer(), { projectId, items })).toMatchObject({
      error: { code: "conflict" },
    });
    const { total, contingencyLeft } = await book();
    expect([total.original, total.budget, contingencyLeft]).toEqual([
      "1000000.00",
      "1000000.00",
      "100000.00",
    ]);
  });
  it("is kept by the database against any change", async () => {
    const change = database().budgetItem.updateMany({ where: { projectId }, data: { amount: 1 } });
    await expect(change).rejects.toThrow("stays as it stood");
    await expect(database().budgetItem.deleteMany({ where: { projectId } })).rejects.toThrow(
      "stays as it stood",
    );
  });
  it("goes with its project when the start is taken back", async () => {
    const { id } = await database().project.create({
      data: {
        ...{ siteId: world.south, lineId: world.lines["SUD-02"] ?? "", code: "SUD-02-R1", name: "New" },
        ...{ currency: "PLN", budget: "10.00" },
        budgetItems: { create: [{ costClass: "drives", amount: "10.00" }] },
      },
    });
    expect((await removeProject(engineer(), { projectId: id, version: 1 })).ok).toBe(true);
    expect(await database().budgetItem.count({ where: { projectId: id } })).toBe(0);
  });
  it("is closed to other sites and to those who may only read", async () => {
    for (const actor of [personWith("engineer", world.north), personWith("viewer", world.south)]) {
      const foreign = await splitBudget(actor, { projectId, items });
      expect(foreign).toEqual(await splitBudget(actor, { projectId: randomUUID(), items }));
      expect(foreign).toMatchObject({ error: { code: "missing" } });
    }
  });
});

describe("an entry of the ledger", () => {
  it("lessens its order when it is a payment for it, and never below nothing", async () => {
    expect((await addCost(engineer(), entry({}))).ok).toBe(true);
    const paid = entry({ kind: "actual", amount: "400000.00", reference: "L-1", orderReference: "PO-1" });
    expect((await addCost(engineer(), { ...paid, costClass: null })).ok).toBe(true);
    expect((await book()).total).toMatchObject({ open: "210000.00", paid: "400000.00", bound: "610000.00" });
    const rest = { ...paid, amount: "250000.00", reference: "L-2" };
    expect((await addCost(engineer(), rest)).ok).toBe(true);
    const { total, overInvoiced } = await book();
    expect(total).toMatchObject({ open: "0.00", bound: "650000.00" });
    expect(overInvoiced).toEqual([{ reference: "PO-1", by: "40000.00" }]);
  });
  it("is converted at the rate of its month where it is stated, else at the budget rates, and keeps the rate", async () => {
    const own = { currency: "JPY", amount: "1000000", costClass: "drives" as const };
    expect((await addCost(engineer(), entry({ ...own, reference: "PO-J1" }))).ok).toBe(true);
    const group = personWith("admin", null);
    const rate = (currency: string, perEuro: string) =>
      setMonthRate(group, {
        ...{ currency, month: "2026-11", seen: null, wanted: { perEuro, source: "Treasury" } },
      });
    expect([await rate("JPY", "160"), await rate("PLN", "4.40")].every(({ ok }) => ok)).toBe(true);
    expect(await rate("JPY", "161")).toMatchObject({ error: { code: "conflict" } });
    expect((await addCost(engineer(), entry({ ...own, reference: "PO-J2" }))).ok).toBe(true);
    const costs = new Map((await file()).costs.map((one) => [one.reference, one]));
    // 4 ÷ 162.5 = 0.0246153846 and 4.40 ÷ 160 = 0.0275 złoty for one yen.
    expect(costs.get("PO-J1")).toMatchObject({
      amount: "24615.38",
      own: { amount: "1000000", currency: "JPY", rate: "0.0246153846", ratedOn: "2026-01-01" },
    });
    expect(costs.get("PO-J2")).toMatchObject({
      amount: "27500.00",
      own: { rate: "0.0275", ratedOn: "2026-11-01", source: "month rate, Treasury" },
    });
    const { months } = await readRateTable(engineer());
    expect(months.map(({ currency, perEuro }) => `${currency} ${perEuro}`)).toEqual(["JPY 160", "PLN 4.4"]);
  });
  it("is refused with more places than its currency has, or in one without a rate", async () => {
    expect(await addCost(engineer(), entry({ reference: "X", amount: "1.234" }))).toMatchObject({
      error: { fields: { amount: "PLN has 2 places behind the point." } },
    });
    expect(
      await addCost(engineer(), entry({ reference: "X", amount: "1.5", currency: "JPY" })),
    ).toMatchObject({
      error: { fields: { amount: "JPY has 0 places behind the point." } },
    });
    expect(await addCost(engineer(), entry({ reference: "X", currency: "KWD" }))).toMatchObject({
      error: { fields: { currency: expect.stringContaining("No rate from KWD to PLN") } },
    });
  });
  it("gets its rates only from those who may plan for all sites", async () => {
    const asked = { currency: "JPY", month: "2026-10", seen: null, wanted: { perEuro: "1", source: "x" } };
    expect(await setMonthRate(engineer(), asked)).toMatchObject({ error: { code: "forbidden" } });
  });
});

describe("a change of the budget", () => {
  const ask = (given: object = {}) =>
    askChange(engineer(), {
      ...{ projectId, what: "Eleven motors", why: "No flange fits", source: "new_money" as const },
      amounts: [{ costClass: "drives" as const, amount: "50000.00" }],
      ...given,
    });
  const mark = async (asked: ReturnType<typeof ask>) => {
    const answer = await asked;
    if (!answer.ok) throw new Error(answer.error.reason);
    return { projectId, ...answer.value };
  };

  it("counts once it is approved by somebody who may, and no longer when the decision is open again", async () => {
    const asked = await mark(ask());
    expect((await book()).askedNew).toBe("50000.00");
    const approve = { ...asked, state: "approved" as const, why: "" };
    expect(await decideChange(engineer(), approve)).toMatchObject({ error: { code: "missing" } });
    expect(await decideChange(personWith("approver", world.north), approve)).toMatchObject({
      error: { code: "missing" },
    });
    const approved = await decideChange(approver(), approve);
    expect(approved.ok).toBe(true);
    expect((await book()).total).toMatchObject({ original: "1000000.00", budget: "1050000.00" });
    expect(await decideChange(approver(), approve)).toMatchObject({ error: { code: "conflict" } });
    const version = approved.ok ? approved.value.version : 0;
    expect(await withdrawChange(engineer(), { ...asked, version })).toMatchObject({
      error: { code: "conflict" },
    });
    expect((await decideChange(approver(), { ...approve, version, state: "asked" })).ok).toBe(true);
    expect((await book()).total.budget).toBe("1000000.00");
    expect((await withdrawChange(engineer(), { ...asked, version: version + 1 })).ok).toBe(true);
    expect((await file()).changes).toEqual([]);
  });
  it("takes from contingency what is there and no more", async () => {
    const take = async (amount: string) => {
      const amounts = [{ costClass: "installation" as const, amount }];
      return decideChange(approver(), {
        ...{ ...(await mark(ask({ source: "contingency", amounts }))), state: "approved", why: "" },
      });
    };
    expect((await take("80000.00")).ok).toBe(true);
    expect(await take("20000.01")).toMatchObject({ error: { code: "impossible" } });
    const { total, contingencyLeft, askedOfContingency, lines } = await book();
    expect([total.budget, contingencyLeft, askedOfContingency]).toEqual([
      "1000000.00",
      "20000.00",
      "20000.01",
    ]);
    expect(lines.find(({ costClass }) => costClass === "installation")?.budget).toBe("280000.00");
  });
  it("is not asked for from a contingency for itself, nor decided without a reason when declined", async () => {
    const amounts = [{ costClass: "contingency" as const, amount: "1.00" }];
    expect(await ask({ source: "contingency", amounts })).toMatchObject({ error: { code: "invalid" } });
  });
});

describe("what a class still needs", () => {
  it("is stated from what the person saw, and makes the forecast known once all classes have it", async () => {
    const state = (costClass: "drives" | "installation", seen: string | null, wanted: string | null) =>
      stateRest(engineer(), { projectId, costClass, seen, wanted });
    expect((await state("drives", null, "10000.00")).ok).toBe(true);
    expect((await book()).total.forecast).toBeNull();
    expect(await state("drives", null, "5.00")).toMatchObject({ error: { code: "conflict" } });
    expect((await state("installation", null, "200000.00")).ok).toBe(true);
    const { total, unstated } = await book();
    expect(unstated).toEqual([]);
    expect(Number(total.forecast)).toBeCloseTo(Number(total.bound) + 210_000, 2);
    expect((await state("drives", "10000.00", null)).ok).toBe(true);
    expect((await book()).unstated).toEqual(["drives"]);
  });
});
