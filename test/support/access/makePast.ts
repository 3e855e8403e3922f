import { runMigrations } from "graphile-worker";
import { removeBackup, removeContact } from "@/lib/data/cardChange";
import { database } from "@/lib/data/client";
import { removePanel } from "@/lib/data/panelChange";
import { databaseUrl } from "@/lib/env";
import { makeActor } from "@/test/support/actors";

const day = (text: string) => new Date(`${text}T00:00:00Z`);
const NO_STEPS = { lots: [], holds: [] };

interface Where {
  readonly siteId: string;
  readonly projectId: string;
  readonly lineId: string;
  readonly machineId: string;
  readonly controllerId: string | null;
  readonly positionId: string;
  readonly partId: string;
}

/** What was done at the own site and can be taken back. */
export async function makePast(where: Where) {
  await runMigrations({ connectionString: databaseUrl() });
  return { ...(await makeRemoved(where)), ...(await makeTyped(where)), ...(await makeClosed(where)) };
}

/** Entries that were removed and can be put back. */
async function makeRemoved({ siteId, machineId, controllerId }: Where) {
  const db = database();
  const admin = await makeActor("admin");
  const { id: backupId } = await db.backup.create({
    data: {
      controllerId: controllerId ?? "",
      kind: "program",
      takenOn: day("2026-01-01"),
      keptAt: "Shelf 9",
    },
  });
  const { id: contactId } = await db.contact.create({
    data: { siteId, role: "Standby", phone: "123", hours: "always" },
  });
  const { id: panelId } = await db.panel.create({ data: { machineId, designation: "+A98" } });
  await removeBackup(admin, { id: backupId });
  await removeContact(admin, { id: contactId });
  await removePanel(admin, { id: panelId });
  return { goneBackupId: backupId, goneContactId: contactId, gonePanelId: panelId };
}

/** What was typed by hand and counted. */
async function makeTyped({ siteId, lineId, machineId, positionId, partId }: Where) {
  const db = database();
  const event = await db.event.create({
    data: {
      ...{ siteId, lineId, machineId, positionId, partId, kind: "failure", happenedAt: day("2026-11-01") },
      ...{ source: "by hand", reference: "of a test" },
    },
  });
  const steps = { ended: null, placed: null, unitMade: null, taken: null, given: null, repair: null };
  await db.auditEntry.create({
    data: { deed: "event:add", entity: "Event", entityId: event.id, siteId, after: { steps } },
  });
  const order = await db.repairOrder.create({
    data: { siteId, partId, reference: "of a test", sentOn: day("2026-11-01"), steps: NO_STEPS } as never,
  });
  const count = await db.stockCount.create({
    data: {
      ...{ siteId, reference: "KAR-C2", limitEuro: "500", openedOn: day("2026-11-02"), openedBy: "Store" },
      ...{
        postedOn: day("2026-11-03"),
        postedBy: "Store",
        approvedOn: day("2026-11-03"),
        approvedBy: "Store",
      },
      steps: NO_STEPS,
    },
  });
  const twin = await db.part.findFirstOrThrow({ where: { id: { not: partId } }, orderBy: { id: "asc" } });
  const third = await db.part.findFirstOrThrow({
    where: { id: { notIn: [partId, twin.id] } },
    orderBy: { id: "desc" },
  });
  const merge = await db.partMerge.create({
    data: {
      ...{
        keptId: partId,
        otherId: third.id,
        steps: { moved: [], successors: [], folded: [], filled: {}, aliasId: null },
        reason: "of a test",
      },
      ...{ decidedBy: "of a test", decidedOn: day("2026-11-01") },
    },
  });
  return {
    typedEventId: event.id,
    typedOrderId: order.id,
    postedCountId: count.id,
    twinPartId: twin.id,
    mergeId: merge.id,
  };
}

/** What the project took out and put in, and a project that was closed. */
async function makeClosed({ siteId, projectId, lineId, positionId, partId }: Where) {
  const db = database();
  const removed = await db.removedUnit.create({ data: { projectId, partId, removedOn: day("2026-11-01") } });
  const fitted = await db.fittedUnit.upsert({
    where: { projectId_positionId: { projectId, positionId } },
    create: { projectId, positionId, partId, serial: "1", fittedOn: day("2026-11-01"), firmware: "1" },
    update: {},
  });
  await db.closeStatement.create({
    data: { projectId, kind: "register", statedBy: "of a test", statedOn: day("2026-11-01") },
  });
  const closed = await db.project.create({
    data: {
      ...{
        siteId,
        lineId,
        code: "KAR-02-R9",
        name: "Closed",
        status: "closed",
        currency: "SEK",
        budget: "100000",
      },
      closing: {
        create: {
          ...{ closedOn: day("2025-11-01"), closedBy: "of a test", steps: {}, checkOn: day("2026-11-01") },
          ...{ checkedOn: day("2026-11-02"), checkedBy: "of a test", conclusion: "of a test", checked: {} },
        },
      },
    },
  });
  return {
    removedId: removed.id,
    fittedId: fitted.id,
    statementKind: "register",
    closedProjectId: closed.id,
  };
}
