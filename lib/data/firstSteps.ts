import "server-only";
import type { Actor } from "@/lib/access/actor";
import { scopeOf } from "@/lib/access/policy";
import { database } from "@/lib/data/client";
import { atSites } from "@/lib/data/scope";
import type { FirstHoldings } from "@/lib/view/firstSteps";

/** What is on record at the actor's sites of all that a first ranking needs. */
export async function readFirstHoldings(actor: Actor): Promise<FirstHoldings> {
  const at = atSites(actor, "read");
  const line = { line: at };
  const [people, parts, lines, axes, lots, events, costed] = await Promise.all([
    scopeOf(actor.grants, "people:write") === "all"
      ? database().user.count({ where: { grants: { some: {} } } })
      : null,
    database().part.count(),
    database().line.count({ where: at }),
    database().axis.count({ where: { machine: line } }),
    database().stockLot.count({ where: at }),
    database().event.count({ where: at }),
    database().line.count({ where: { ...at, costPerHour: { not: null } } }),
  ]);
  return { people, parts, lines, axes, lots, events, costed };
}

/** Whether nothing is on record anywhere that a ranking could be made of. */
export async function isStillEmpty(_actor: Actor): Promise<boolean> {
  return (await database().axis.findFirst({ select: { id: true } })) === null;
}
