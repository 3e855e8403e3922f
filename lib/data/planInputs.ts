import "server-only";
import type { Actor } from "@/lib/access/actor";
import { mayAt, scopeOf } from "@/lib/access/policy";
import { database } from "@/lib/data/client";
import { readObligations } from "@/lib/data/obligations";
import { atSites, sites } from "@/lib/data/scope";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type {
  BudgetRate,
  Freeze,
  InputDuty,
  InputSite,
  InputWindow,
  PlanFigure,
  PlanInputs,
  Precedence,
} from "@/lib/view/planInputs";

/** What plans are made with on a day, as far as the person may see it; the group's money only with all its sites. */
export async function readPlanInputs(actor: Actor, asOf: IsoDate): Promise<PlanInputs> {
  const seesGroup = scopeOf(actor.grants, "read") === "all";
  const [places, rates, rows, windows, freezes, precedences, duties] = await Promise.all([
    readPlaces(actor),
    readRates(actor),
    readFigureRows(actor),
    readWindows(actor, asOf),
    readFreezes(actor),
    readPrecedences(actor),
    readDuties(actor, asOf),
  ]);
  const figures = rows.map((row) => figureOf(row, rates));
  const years = figures.flatMap(({ kind, year }) =>
    kind === "budget" && year !== null && year > Number(asOf.slice(0, 4)) ? [year] : [],
  );
  return {
    years: [...new Set(years)].sort(),
    ...{ ...places, figures, rates, windows, freezes, precedences, duties, seesGroup },
    writesGroup: scopeOf(actor.grants, "plan:write") === "all",
  };
}

async function readPlaces(actor: Actor) {
  const rows = await database().site.findMany({
    where: sites(actor, "read"),
    orderBy: { code: "asc" },
    select: {
      ...{ id: true, code: true, name: true, currency: true },
      crewRegion: { select: { region: { select: { id: true, name: true } } } },
    },
  });
  const regions = new Map<string, { id: string; name: string; sites: string[] }>();
  for (const { code, crewRegion } of rows) {
    if (!crewRegion) continue;
    const { id, name } = crewRegion.region;
    const known = regions.get(id) ?? { id, name, sites: [] };
    regions.set(id, { ...known, sites: [...known.sites, code] });
  }
  const seen = rows.map(({ crewRegion, ...site }): InputSite => {
    return {
      ...site,
      regionId: crewRegion?.region.id ?? null,
      writes: mayAt(actor.grants, "plan:write", site.id),
    };
  });
  return { sites: seen, regions: [...regions.values()] };
}

async function readRates(_actor: Actor): Promise<BudgetRate[]> {
  const rows = await database().currencyRate.findMany({ orderBy: { currency: "asc" } });
  return rows.map(({ currency, perEuro, validFrom }) => ({
    ...{ currency, perEuro: perEuro.toNumber(), validFrom: dayOf(validFrom) },
  }));
}

/** Figures of the person's sites, of their regions and duties, and rules; money of the group only with all sites. */
function readFigureRows(actor: Actor) {
  const own = sites(actor, "read");
  const seesGroup = scopeOf(actor.grants, "read") === "all";
  const group = seesGroup ? {} : { kind: { notIn: ["budget" as const, "sign_off_above" as const] } };
  return database().planFigure.findMany({
    where: {
      OR: [
        { siteId: { not: null }, site: own },
        { region: { sites: { some: { site: own } } } },
        { obligationId: { not: null }, obligation: atSites(actor, "read") },
        { siteId: null, regionId: null, obligationId: null, ...group },
      ],
    },
    orderBy: [{ kind: "asc" }, { year: "asc" }, { id: "asc" }],
  });
}

function figureOf(
  row: Awaited<ReturnType<typeof readFigureRows>>[number],
  rates: readonly BudgetRate[],
): PlanFigure {
  const { value, statedOn, currency, ...rest } = row;
  // The reporting currency needs no rate.
  const perEuro = currency === "EUR" ? 1 : (rates.find((one) => one.currency === currency)?.perEuro ?? null);
  const amount = value.toNumber();
  return {
    ...{ ...rest, value: amount, currency, statedOn: dayOf(statedOn) },
    euros: perEuro === null || currency === null ? null : amount / perEuro,
  };
}

async function readWindows(actor: Actor, asOf: IsoDate): Promise<InputWindow[]> {
  const rows = await database().shutdownWindow.findMany({
    where: { ...atSites(actor, "read"), endsOn: { gte: new Date(`${asOf}T00:00:00Z`) } },
    include: { site: { select: { code: true } } },
    orderBy: [{ startsOn: "asc" }, { site: { code: "asc" } }],
  });
  return rows.map(({ site, startsOn, endsOn, usableHours, id, siteId, name, note, version }) => ({
    ...{ id, siteId, name, note, version, siteCode: site.code },
    ...{ startsOn: dayOf(startsOn), endsOn: dayOf(endsOn), usableHours: usableHours?.toNumber() ?? null },
  }));
}

async function readFreezes(_actor: Actor): Promise<Freeze[]> {
  const rows = await database().approvalFreeze.findMany({ orderBy: { freezesOn: "asc" } });
  return rows.map(({ freezesOn, coversFrom, coversTo, ...rest }) => ({
    ...{ ...rest, freezesOn: dayOf(freezesOn), coversFrom: dayOf(coversFrom), coversTo: dayOf(coversTo) },
  }));
}

async function readPrecedences(actor: Actor): Promise<Precedence[]> {
  const own = atSites(actor, "read");
  const line = { select: { id: true, code: true } };
  const rows = await database().planPrecedence.findMany({
    where: { first: own, following: own },
    select: {
      ...{ id: true, reason: true, source: true, owner: true, version: true },
      ...{ first: line, following: line },
    },
    orderBy: [{ first: { code: "asc" } }, { id: "asc" }],
  });
  return rows;
}

async function readDuties(actor: Actor, asOf: IsoDate): Promise<InputDuty[]> {
  const [duties, projects] = await Promise.all([
    readObligations(actor, { asOf }),
    database().project.findMany({
      where: { ...atSites(actor, "read"), status: { in: ["funded", "in_work", "proving"] } },
      select: { code: true, lineId: true },
      orderBy: { code: "asc" },
    }),
  ]);
  const open = duties.filter(({ doneOn }) => doneOn === null);
  return open.map(({ id, line, siteCode, siteId, title, kind, dueOn }) => ({
    ...{ id, siteCode, siteId, title, kind, dueOn, lineCode: line?.code ?? null },
    project: projects.find(({ lineId }) => lineId === line?.id)?.code ?? null,
  }));
}

const dayOf = (date: Date): IsoDate => date.toISOString().slice(0, 10);
