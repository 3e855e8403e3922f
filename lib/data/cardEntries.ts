import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { atSites } from "@/lib/data/scope";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { MachineDossier } from "@/lib/view/machine";
import type { CardBackup, CardContact } from "@/lib/view/nightCard";

type OfMachine = Pick<MachineDossier, "id" | "asOf" | "site" | "line">;

/** The copies kept of a machine's controller on its day, and the functions to call for it. */
export async function readCardEntries(
  actor: Actor,
  machine: OfMachine,
): Promise<{ readonly backups: CardBackup[]; readonly contacts: CardContact[] }> {
  const [backups, contacts] = await Promise.all([readBackups(actor, machine), readContacts(actor, machine)]);
  return { backups, contacts };
}

/** The copies kept of the machine's controller up to the day, newest first. */
async function readBackups(actor: Actor, { id, asOf }: OfMachine): Promise<CardBackup[]> {
  const rows = await database().backup.findMany({
    where: {
      controller: { ...atSites(actor, "read"), machines: { some: { id } } },
      takenOn: { lte: new Date(`${asOf}T00:00:00Z`) },
    },
    orderBy: [{ takenOn: "desc" }, { kind: "asc" }],
  });
  return rows.map(({ controllerId: _, takenOn, verifiedOn, ...plain }) => {
    const verified = verifiedOn && dayOf(verifiedOn);
    return {
      ...plain,
      takenOn: dayOf(takenOn),
      verifiedOn: verified !== null && verified <= asOf ? verified : null,
    };
  });
}

/** Whom to call: the functions of the line, then those of its whole site. */
function readContacts(actor: Actor, { site, line }: OfMachine): Promise<CardContact[]> {
  return database().contact.findMany({
    where: {
      AND: [atSites(actor, "read"), { siteId: site.id, OR: [{ lineId: line.id }, { lineId: null }] }],
    },
    orderBy: [{ lineId: { sort: "asc", nulls: "last" } }, { role: "asc" }, { id: "asc" }],
    select: { id: true, role: true, phone: true, hours: true, note: true },
  });
}

function dayOf(date: Date): IsoDate {
  return date.toISOString().slice(0, 10);
}
