import "server-only";
import type { Actor } from "@/lib/access/actor";
import { mayAt, seesAmounts } from "@/lib/access/policy";
import { database } from "@/lib/data/client";
import { readControllerFacts } from "@/lib/data/controllerFacts";
import { currentEvaluation } from "@/lib/data/group/currentEvaluation";
import { readRulesInForce } from "@/lib/data/rules";
import { asGuestAt, atSites, projects, siteIds } from "@/lib/data/scope";
import { readScopeAxes, readScopeItems } from "@/lib/data/scopeAxes";
import { readScopeParts } from "@/lib/data/scopeParts";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { ScopeFacts, WindowFact } from "@/lib/retrofit/scope/scopeFacts";

/** A line with what its retrofit asks. */
export interface LineScope {
  readonly line: { readonly code: string; readonly name: string; readonly siteName: string };
  readonly facts: ScopeFacts;
  /** Windows of the line and its site that are not over, by first day. */
  readonly windows: readonly WindowFact[];
  /** Whether amounts are shown to the actor; where not, no price is in the facts. */
  readonly showsAmounts: boolean;
  /** The actor is a contractor of a project on the line and reads nothing else of its site. */
  readonly outside: boolean;
}

/**
 * What is known of a line for its retrofit; null when there is none, or it is at a site the actor may not see and has no
 * project the actor works in.
 */
export async function readLineScope(
  actor: Actor,
  { code, asOf }: { readonly code: string; readonly asOf: IsoDate },
): Promise<LineScope | null> {
  const line = await database().line.findFirst({
    where: { code, ...atSitesOrInProjects(actor) },
    select: { id: true, code: true, name: true, siteId: true, site: { select: { name: true } } },
  });
  if (line === null) return null;
  const outside = !mayAt(actor.grants, "read", line.siteId);
  return readWhole(outside ? asGuestAt(actor, line.siteId) : actor, { line, asOf, outside });
}

/** `where` of lines: at the sites the actor reads, or of a project they work in. */
function atSitesOrInProjects(actor: Actor) {
  const own = siteIds(actor, "read");
  return own ? { OR: [{ siteId: own }, { projects: { some: projects(actor, "read") } }] } : {};
}

interface FoundLine {
  readonly id: string;
  readonly code: string;
  readonly name: string;
  readonly siteId: string;
  readonly site: { readonly name: string };
}

interface ScopeOf {
  readonly line: FoundLine;
  readonly asOf: IsoDate;
  readonly outside: boolean;
}

async function readWhole(actor: Actor, { line, asOf, outside }: ScopeOf): Promise<LineScope> {
  const showsAmounts = seesAmounts(actor.grants);
  const { id: evaluationId } = await currentEvaluation(asOf);
  const question = { lineId: line.id, asOf };
  const [{ parts, successors }, rules, controllers, windows] = await Promise.all([
    readScopeParts(actor, evaluationId),
    readRulesInForce(actor),
    readControllerFacts(actor, question),
    readWindows(actor, { ...question, siteId: line.siteId }),
  ]);
  const partOf = (id: string | null) => parts.find((part) => part.id === id) ?? null;
  const [axes, items] = await Promise.all([
    readScopeAxes(actor, { ...question, partOf }),
    readScopeItems(actor, { ...question, partOf }),
  ]);
  return {
    ...{ showsAmounts, outside },
    line: { code: line.code, name: line.name, siteName: line.site.name },
    facts: {
      ...{ lineCode: line.code, asOf, axes, items, rules, parts, successors },
      controllers: controllers.get(line.id) ?? [],
    },
    windows,
  };
}

interface WindowQuestion {
  readonly lineId: string;
  readonly siteId: string;
  readonly asOf: IsoDate;
}

async function readWindows(actor: Actor, { lineId, siteId, asOf }: WindowQuestion): Promise<WindowFact[]> {
  const rows = await database().shutdownWindow.findMany({
    where: {
      AND: [
        atSites(actor, "read"),
        { siteId, endsOn: { gte: new Date(`${asOf}T00:00:00Z`) } },
        { OR: [{ lineId: null }, { lineId }] },
      ],
    },
    orderBy: [{ startsOn: "asc" }, { name: "asc" }],
  });
  return rows.map(({ id, name, startsOn, endsOn, usableHours, note }) => ({
    ...{ id, name, note, usableHours: usableHours?.toNumber() ?? null },
    startsOn: startsOn.toISOString().slice(0, 10),
    endsOn: endsOn.toISOString().slice(0, 10),
  }));
}
