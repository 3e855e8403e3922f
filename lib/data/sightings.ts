import "server-only";
import type { Actor } from "@/lib/access/actor";
import { mayAt } from "@/lib/access/policy";
import { database } from "@/lib/data/client";
import { atSites } from "@/lib/data/scope";
import { loadComparison } from "@/lib/data/sighting/loadSources";
import { readSiteNames, type SiteName } from "@/lib/data/siteNames";
import type { SightFinding } from "@/lib/intake/sightings/compareSources";
import type { IsoDate } from "@/lib/kernel/isoDate";
import {
  disagreement,
  type GhostMachine,
  ghostMachines,
  type SightRow,
  type SightVerdict,
  sightRow,
} from "@/lib/view/sighting";

/** A list as it was loaded. */
export interface LoadedList {
  readonly source: string;
  readonly seenOn: IsoDate;
  readonly devices: number;
}

export interface Sightings {
  readonly sites: readonly SiteName[];
  /** The site looked at; null when the person may read none. */
  readonly site: SiteName | null;
  readonly lists: readonly LoadedList[];
  readonly rows: readonly SightRow[];
  readonly ghosts: readonly GhostMachine[];
  readonly apart: number;
  readonly compared: number;
  readonly notLookedAt: number;
  /** Decisions whose finding no longer stands: what was taken over agrees now. */
  readonly settled: readonly SightVerdict[];
  readonly maySettle: boolean;
}

/** What the lists of a site saw beside its register; null when the person may not read the site. */
export async function readSightings(
  actor: Actor,
  { siteCode, asOf }: { readonly siteCode: string | null; readonly asOf: IsoDate },
): Promise<Sightings | null> {
  const sites = await readSiteNames(actor);
  const site = siteCode === null ? await firstWithLists(actor, sites) : findSite(sites, siteCode);
  if (site === null) return siteCode === null ? empty(sites) : null;
  const at = { siteId: site.id, asOf };
  const [{ findings, notLookedAt }, lists, verdicts] = await Promise.all([
    loadComparison(database(), at),
    readLists(at),
    readVerdicts(site.id),
  ]);
  const byMark = new Map(verdicts.map((verdict) => [verdict.mark, verdict]));
  const standing = new Set(findings.map(({ mark }) => mark));
  const { apart, of } = disagreement(findings);
  return {
    ...{ sites, site, lists, apart, compared: of, notLookedAt },
    rows: findings.map((finding) => sightRow(finding, byMark.get(finding.mark) ?? null)),
    ghosts: ghostMachines(findings.filter((finding) => isOpen(finding, byMark))),
    settled: verdicts.filter(({ mark }) => !standing.has(mark)),
    maySettle: mayAt(actor.grants, "line:write", site.id),
  };
}

/** A place somebody said is there although no list sees it makes no ghost. */
function isOpen({ kind, mark }: SightFinding, verdicts: ReadonlyMap<string, SightVerdict>): boolean {
  return kind !== "unseen" || !verdicts.has(mark);
}

const findSite = (sites: readonly SiteName[], code: string) => sites.find((one) => one.code === code) ?? null;

const empty = (sites: readonly SiteName[]): Sightings => ({
  ...{ sites, site: null, lists: [], rows: [], ghosts: [], apart: 0, compared: 0, notLookedAt: 0 },
  ...{ settled: [], maySettle: false },
});

async function firstWithLists(actor: Actor, sites: readonly SiteName[]): Promise<SiteName | null> {
  const found = await database().sighting.findFirst({
    where: atSites(actor, "read"),
    orderBy: { site: { code: "asc" } },
    select: { siteId: true },
  });
  return sites.find(({ id }) => id === found?.siteId) ?? sites[0] ?? null;
}

function readLists({
  siteId,
  asOf,
}: {
  readonly siteId: string;
  readonly asOf: IsoDate;
}): Promise<LoadedList[]> {
  return database().$queryRaw<LoadedList[]>`
    SELECT "source", "seenOn"::text AS "seenOn", count(*)::int AS "devices" FROM "Sighting"
    WHERE "siteId" = ${siteId}::uuid AND "seenOn" <= ${asOf}::date
    GROUP BY 1, 2 ORDER BY 2 DESC, 1`;
}

async function readVerdicts(siteId: string): Promise<SightVerdict[]> {
  const rows = await database().sightVerdict.findMany({
    where: { siteId },
    orderBy: [{ decidedOn: "desc" }, { id: "desc" }],
    omit: { steps: true },
  });
  return rows.map(({ siteId: _, decidedOn, ...row }) => ({
    ...row,
    decidedOn: decidedOn.toISOString().slice(0, 10),
  }));
}
