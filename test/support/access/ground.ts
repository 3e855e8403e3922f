import { database } from "@/lib/data/client";
import { axisChecks } from "@/lib/retrofit/axisChecks";
import { load } from "@/seed/load";
import { small } from "@/seed/scenarios/small";
import { makeDesk } from "@/test/support/access/makeDesk";
import { makeMeetings } from "@/test/support/access/makeMeetings";
import { makePast } from "@/test/support/access/makePast";
import { formOf, type Known } from "@/test/support/access/sampleInput";

/** The site whose things are asked for, and the one whose people ask. */
export const OWN = "KAR";
export const OTHER = "THO";

/** Words that only appear where the things of a site do. */
export const WORDS: Readonly<Record<string, RegExp>> = {
  [OWN]: /\bKAR\b|Karlsvik/,
  [OTHER]: /\bTHO\b|Thornby/,
};

export interface Ground {
  readonly own: string;
  readonly other: string;
  /** Ids and codes of things of the own site, by the names fields and addresses have for them. */
  readonly known: Known;
}

/** Values of fields that no row has. */
const words: Known = {
  ...{
    none: "",
    nobody: null,
    noTerms: {},
    ruleKind: "ring_whole",
    checkId: axisChecks[0]?.id,
    siteCode: OWN,
  },
  ...{
    laterDay: "2027-06-30",
    laterInstant: "2027-01-01T10:00",
    currency: "SEK",
    registerName: "stock",
    noCodes: [],
    noCosts: {},
    gap: "price-missing",
    newEmail: "somebody.new@halvenor.example",
    exampleFile: "VEL-axes.csv",
    listName: "lines",
    searched: "drive",
  },
  grants: [{ role: "viewer", siteId: null }],
  changes: { discountRate: 0.05 },
  source: { kind: "none" },
  noticeForm: formOf({ text: "Drive BW-OK-020: last order 2027-06-30", fields: "{}" }),
};

const formsOf = (projectId: string): Known => ({ costForm: formOf({ projectId, pasted: "x" }) });

/** Fills a database with two sites and at least one of everything at the own one. */
export async function makeGround(url: string): Promise<Ground> {
  await load(url, "small", small());
  const db = database();
  const [own, other] = await Promise.all(
    [OWN, OTHER].map((code) => db.site.findUniqueOrThrow({ where: { code }, select: { id: true } })),
  );
  if (!own || !other) throw new Error("two sites are needed");
  // What goes between two sites goes to a third one, where nobody here has a role.
  const third = await db.site.create({
    data: { code: "AND", name: "Andermoor", country: "PL", timeZone: "Europe/Warsaw", currency: "EUR" },
  });
  const at = { siteId: own.id };
  const places = await findPlaces(own.id);
  const [past, work, desk, meetings] = await Promise.all([
    makePast({ ...places, ...at }),
    findWork(places.projectId),
    makeDesk({ ...places, ...at, toSiteId: third.id }),
    makeMeetings({ ...places, ...at }),
  ]);
  return {
    own: own.id,
    other: other.id,
    known: {
      ...at,
      ...places,
      ...work,
      ...desk,
      ...meetings,
      ...past,
      ...words,
      ...formsOf(places.projectId),
    },
  };
}

/** What stands on the site. */
async function findPlaces(siteId: string) {
  const db = database();
  const project = await db.project.findFirstOrThrow({ where: { siteId } });
  const line = await db.line.findUniqueOrThrow({ where: { id: project.lineId } });
  const position = await db.position.findFirstOrThrow({
    where: { machine: { lineId: line.id }, axisId: { not: null }, partId: { not: null } },
    include: { machine: true },
    orderBy: { id: "asc" },
  });
  const lot = await db.stockLot.findFirstOrThrow({
    where: { siteId, quantity: { gt: 1 } },
    orderBy: { id: "asc" },
  });
  const ring = await db.network.findFirstOrThrow({ where: { siteId, kind: "fibre_ring" } });
  const panel = await db.panel.findFirstOrThrow({ where: { machineId: position.machineId } });
  const events = await db.event.findMany({ where: { lineId: line.id }, take: 2, orderBy: { id: "asc" } });
  const family = await db.family.findFirstOrThrow({ where: { parts: { some: { id: lot.partId } } } });
  const { machineId, axisId, machine } = position;
  return {
    ...{ projectId: project.id, projectCode: project.code, lineId: line.id, lineCode: line.code },
    ...{ machineId, axisId: axisId ?? "", axisIds: [axisId], controllerId: machine.controllerId },
    ...{ positionId: position.id, panelId: panel.id, networkId: ring.id },
    ...{ lotId: lot.id, partId: lot.partId, familyId: family.id },
    ...{ eventId: events[0]?.id, keptId: events[0]?.id, otherId: events[1]?.id },
  };
}

/** What hangs on the project. */
async function findWork(projectId: string) {
  const db = database();
  const where = { projectId };
  const [milestone, cost, change, task, gate, point, risk] = await Promise.all([
    db.milestone.findFirstOrThrow({ where }),
    db.costEntry.findFirstOrThrow({ where }),
    db.changeOrder.findFirstOrThrow({ where }),
    db.projectTask.findFirstOrThrow({ where, orderBy: { sequence: "desc" } }),
    db.projectGate.findFirstOrThrow({ where, include: { items: true } }),
    db.openPoint.findFirstOrThrow({ where }),
    db.projectRisk.findFirstOrThrow({ where }),
  ]);
  const cutover = await db.cutover.findFirst({ where, include: { steps: true } });
  const costImport = await db.costImport.create({
    data: { projectId, fileName: "orders.csv", fileHash: "0".repeat(64), added: 0, createdBy: "of a test" },
  });
  return {
    ...{
      milestoneId: milestone.id,
      costId: cost.id,
      changeId: change.id,
      taskId: task.id,
      importId: costImport.id,
    },
    ...{ gateId: gate.id, itemId: gate.items[0]?.id, pointId: point.id, riskId: risk.id },
    ...{ cutoverId: cutover?.id, stepId: cutover?.steps[0]?.id },
  };
}
