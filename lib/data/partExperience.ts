import "server-only";
import type { Actor } from "@/lib/access/actor";
import { maySomewhere } from "@/lib/access/policy";
import { database } from "@/lib/data/client";
import { assumptionsInUse } from "@/lib/data/group/assumptionsInUse";
import { currentEvaluation } from "@/lib/data/group/currentEvaluation";
import { WINDOW_YEARS } from "@/lib/data/group/loadExperience";
import {
  loadPartMarks,
  loadPartService,
  type PartMark,
  type PartService,
} from "@/lib/data/group/partRecords";
import { readPartEvents } from "@/lib/data/partEvents";
import type { PartQuestion } from "@/lib/data/partFacts";
import { sites } from "@/lib/data/scope";
import { addMonths } from "@/lib/kernel/isoDate";
import { rateTrend } from "@/lib/reliability/rateTrend";
import { serviceTime } from "@/lib/reliability/serviceTime";
import type { PoolFigures } from "@/lib/risk/evaluation";
import type { KindTrend, PartCounts, PartExperience, SiteCounts } from "@/lib/view/partExperience";

type ExperienceQuestion = Pick<PartQuestion, "partId" | "asOf">;

/** What five years of records tell of a part: its events, what each site and each part of the family counted, trends. */
export async function readPartExperience(
  actor: Actor,
  question: ExperienceQuestion,
): Promise<PartExperience> {
  const tx = database();
  const [{ values: assumptions }, seenSites, events, marks, service, family] = await Promise.all([
    assumptionsInUse(tx),
    tx.site.findMany({ where: sites(actor, "read"), select: { id: true, code: true, name: true } }),
    readPartEvents(actor, question),
    loadPartMarks(tx, question),
    loadPartService(tx, question),
    readFamilyCounts(actor, question),
  ]);
  const seen = new Set(seenSites.map(({ id }) => id));
  const named = seenSites.map(({ id, code, name }) => ({ code, name, ...countsAt([id], marks, service) }));
  const others = [...marks, ...service].map(({ siteId }) => siteId).filter((id) => !seen.has(id));
  return {
    since: addMonths(question.asOf, -12 * WINDOW_YEARS),
    assumptions,
    events,
    sites: named.filter(isSomething).sort((a, b) => (a.code < b.code ? -1 : 1)),
    // Other sites appear as one unnamed sum, and in the trend of the whole pool.
    elsewhere: others.length === 0 ? null : countsAt([...new Set(others)], marks, service),
    family,
    trends: {
      removals: trendOf(
        marks.map(({ day }) => day),
        service,
      ),
      failures: trendOf(
        marks.flatMap(({ failureDay }) => failureDay ?? []),
        service,
      ),
    },
  };
}

const isSomething = ({ removals, unitYears }: Pick<SiteCounts, "removals" | "unitYears">) =>
  removals > 0 || unitYears > 0;

function countsAt(ids: readonly string[], marks: readonly PartMark[], service: readonly PartService[]) {
  const own = marks.filter(({ siteId }) => ids.includes(siteId));
  const stretches = service.filter(({ siteId }) => ids.includes(siteId));
  return {
    removals: own.length,
    failures: own.filter(({ failureDay }) => failureDay !== null).length,
    unitYears: serviceTime(stretches, Math.max(0, ...stretches.map(({ untilDay }) => untilDay))),
  };
}

/** Trend over the clock of the whole pool; what came before any unit was in service has no time on it. */
function trendOf(days: readonly number[], service: readonly PartService[]): KindTrend {
  const end = Math.max(0, ...service.map(({ untilDay }) => untilDay));
  const unitYears = serviceTime(service, end);
  const times = days
    .map((day) => serviceTime(service, day))
    .filter((time) => time > 0)
    .sort((a, b) => a - b);
  return { ...rateTrend(times, unitYears), before: days.length - times.length };
}

/** What the parts of the family counted at all sites; null for a part without a family. */
async function readFamilyCounts(
  actor: Actor,
  { partId, asOf }: ExperienceQuestion,
): Promise<readonly PartCounts[] | null> {
  if (!maySomewhere(actor.grants, "read")) return null;
  const family = { parts: { some: { id: partId } } };
  if ((await database().family.count({ where: family })) === 0) return null;
  const { id } = await currentEvaluation(asOf);
  const pools = await database().evaluatedPool.findMany({
    where: { evaluationId: id, part: { family } },
    select: { result: true, part: { select: { id: true, number: true } } },
    orderBy: { part: { number: "asc" } },
  });
  return pools
    .map(({ part, result }) => countsOf(part, result as unknown as PoolFigures))
    .filter(isSomething);
}

function countsOf(part: Pick<PartCounts, "id" | "number">, { removal, failure }: PoolFigures): PartCounts {
  return { ...part, removals: removal.events, failures: failure.events, unitYears: removal.unitYears };
}
