import "server-only";
import type { Actor } from "@/lib/access/actor";
import { mayAt } from "@/lib/access/policy";
import { database } from "@/lib/data/client";
import { currentEvaluation } from "@/lib/data/group/currentEvaluation";
import { keptGaps } from "@/lib/data/quality/keptGaps";
import { atSites } from "@/lib/data/scope";
import { readSiteNames, type SiteName } from "@/lib/data/siteNames";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { LinePlace } from "@/lib/risk/draws/linePlace";
import type { LineResult } from "@/lib/risk/evaluation";
import type { WeighedLine } from "@/lib/risk/mending/gapEffect";
import type { FixLine } from "@/lib/risk/mending/nextFixes";
import { type EarlierGap, type FootingRow, footingRows, type StatedNorm } from "@/lib/view/footing";
import { resultWithoutAmounts } from "@/lib/view/lineWithoutAmounts";

/** Which sites: one, or (null) all the person may read. */
export interface FootingQuestion {
  readonly asOf: IsoDate;
  readonly siteCode: string | null;
}

/** A line as the evaluation left it. */
export interface EvaluatedLineRow extends WeighedLine, FixLine {
  readonly code: string;
  readonly result: LineResult;
}

export interface Footing {
  /** All sites the person may read. */
  readonly sites: readonly SiteName[];
  /** The one asked for; null is all. */
  readonly site: SiteName | null;
  readonly rows: readonly FootingRow[];
  readonly lines: readonly EvaluatedLineRow[];
  readonly engine: string;
  readonly dataVersion: number;
}

/** What the figures of some sites stand on; null when the person may not read the one asked for. */
export async function readFooting(
  actor: Actor,
  { asOf, siteCode }: FootingQuestion,
): Promise<Footing | null> {
  const sites = await readSiteNames(actor);
  const site = sites.find(({ code }) => code === siteCode) ?? null;
  if (siteCode !== null && site === null) return null;
  const ids = (site === null ? sites : [site]).map(({ id }) => id);
  const { id: evaluationId, engine, dataVersion } = await currentEvaluation(asOf);
  const [gaps, lines, earlier, norms] = await Promise.all([
    keptGaps({ asOf, ids, dataVersion }),
    readEvaluatedLines(actor, evaluationId, ids),
    readEarlier(ids, asOf),
    readEffortNorms(actor),
  ]);
  const rows = footingRows({ gaps, lines, earlier, norms });
  return { sites, site, rows, lines, engine, dataVersion };
}

/** Lines at some of the person's sites, as evaluated; without amounts where they are not shown to the actor. */
export async function readEvaluatedLines(
  actor: Actor,
  evaluationId: string,
  siteIds: readonly string[],
): Promise<EvaluatedLineRow[]> {
  const rows = await database().evaluatedLine.findMany({
    where: { evaluationId, line: { AND: [atSites(actor, "read"), { siteId: { in: [...siteIds] } }] } },
    select: { lineId: true, result: true, place: true, line: { select: { code: true, siteId: true } } },
    orderBy: { line: { code: "asc" } },
  });
  return rows.map(({ lineId, result, place, line }) => ({
    ...{ id: lineId, code: line.code, siteId: line.siteId },
    result: shownResult(actor, line.siteId, result as unknown as LineResult),
    // Where a shelf is not counted is not passed on: it may be another's site.
    unknowns: ((place as unknown as LinePlace | null)?.unknowns ?? []).map(
      ({ siteIds: _, ...unknown }) => unknown,
    ),
  }));
}

function shownResult(actor: Actor, siteId: string, result: LineResult): LineResult {
  return mayAt(actor.grants, "money:read", siteId) ? result : resultWithoutAmounts(result);
}

/** The last count of each gap at each site before a day. */
async function readEarlier(siteIds: readonly string[], asOf: IsoDate): Promise<EarlierGap[]> {
  return database().$queryRaw<EarlierGap[]>`
    SELECT DISTINCT ON ("siteId", "gap") "siteId"::text AS "siteId", "gap" AS "key", "asOf"::text AS "asOf", "missing"
    FROM "GapCount" WHERE "siteId" = ANY(${[...siteIds]}::uuid[]) AND "asOf" < ${asOf}::date
    ORDER BY "siteId", "gap", "asOf" DESC`;
}

/** The hours of mending somebody set; what nobody set is the product's own list. */
export async function readEffortNorms(_actor: Actor): Promise<StatedNorm[]> {
  const rows = await database().effortNorm.findMany({ orderBy: { gap: "asc" } });
  return rows.map(({ gap, hours, changedOn, changedBy, version }) => ({
    ...{ gap, hours: hours.toNumber(), changedBy, version },
    changedOn: changedOn.toISOString().slice(0, 10),
  }));
}
