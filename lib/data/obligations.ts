import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { atSites, sites } from "@/lib/data/scope";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { Obligation, ObligationPlace } from "@/lib/view/obligation";
import type { Prisma } from "@/prisma/generated/client";

/** The duties known on a day: all the actor may see, or those of one line with those of its whole site. */
export interface ObligationQuestion {
  readonly asOf: IsoDate;
  readonly of?: { readonly lineId: string; readonly siteId: string };
}

const parts = {
  site: { select: { code: true } },
  line: { select: { id: true, code: true } },
} satisfies Prisma.ObligationInclude;

type StoredObligation = Prisma.ObligationGetPayload<{ include: typeof parts }>;

/**
 * Safety and legal dates at the sites the actor may read, soonest first.
 *
 * As known on the day: one recorded later is not there, one done later is still open.
 */
export async function readObligations(actor: Actor, { asOf, of }: ObligationQuestion): Promise<Obligation[]> {
  const about = of ? { OR: [{ lineId: of.lineId }, { lineId: null, siteId: of.siteId }] } : {};
  const rows = await database().obligation.findMany({
    where: { AND: [atSites(actor, "read"), about], recordedOn: { lte: new Date(`${asOf}T00:00:00Z`) } },
    include: parts,
    orderBy: [{ dueOn: "asc" }, { id: "asc" }],
  });
  return rows.map((row) => obligationOf(row, asOf));
}

/** The sites and lines where the actor may write dates, by code. */
export async function readObligationPlaces(actor: Actor): Promise<ObligationPlace[]> {
  return database().site.findMany({
    where: sites(actor, "line:write"),
    orderBy: { code: "asc" },
    select: {
      ...{ id: true, code: true, name: true },
      lines: { select: { id: true, code: true, name: true }, orderBy: { code: "asc" } },
    },
  });
}

function obligationOf(row: StoredObligation, asOf: IsoDate): Obligation {
  const { id, siteId, site, line, kind, title, source, owner, evidence, version } = row;
  const doneOn = row.doneOn === null ? null : dayOf(row.doneOn);
  return {
    ...{ id, siteId, line, kind, title, source, owner, evidence, version },
    siteCode: site.code,
    dueOn: dayOf(row.dueOn),
    recordedOn: dayOf(row.recordedOn),
    doneOn: doneOn !== null && doneOn <= asOf ? doneOn : null,
  };
}

const dayOf = (date: Date): IsoDate => date.toISOString().slice(0, 10);
