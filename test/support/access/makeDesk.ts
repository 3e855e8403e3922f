import { hashOf } from "@/lib/access/secret";
import { database } from "@/lib/data/client";
import { FIRST_CHOICE } from "@/lib/schema/buyDecision";
import { BUY_TERMS } from "@/lib/view/lastBuySheet";

const day = (text: string) => new Date(`${text}T00:00:00Z`);

interface Where {
  readonly siteId: string;
  readonly toSiteId: string;
  readonly lineId: string;
  readonly partId: string;
  readonly lotId: string;
  readonly machineId: string;
  readonly familyId: string;
}

/** What planners and the store have on their desks, of the own site. */
export async function makeDesk(where: Where) {
  return { ...(await makePlans(where)), ...(await makeShelf(where)), ...(await makeFiles(where)) };
}

async function makePlans({ siteId, lineId }: Where) {
  const db = database();
  const plan = await db.plan.create({
    data: {
      ...{
        name: "A board",
        year: 2027,
        budget: "1000000",
        asOf: day("2026-11-30"),
        rankedBy: "loss",
        kind: "board",
      },
      ...{ dataVersion: 1, engine: "1", createdBy: "of a test" },
      lines: { create: { lineId, rank: 1, cost: "311000", stopLoss: "422000", score: "0.5", funded: true } },
    },
    include: { lines: true },
  });
  const run = await db.solveRun.create({
    data: {
      ...{
        planId: plan.id,
        planVersion: 1,
        asOf: day("2026-11-30"),
        engine: "1",
        dataVersion: 1,
        inputHash: "0",
      },
      ...{ solver: "of a test", seed: 1, timeLimitSeconds: 5, progress: [], startedBy: "of a test" },
    },
  });
  const said = { source: "of a test", owner: "Planning" };
  const window = await db.shutdownWindow.findFirstOrThrow({ where: { siteId } });
  const freeze = await db.approvalFreeze.create({
    data: {
      name: "A freeze",
      freezesOn: day("2027-02-01"),
      coversFrom: day("2027-03-01"),
      coversTo: day("2027-04-01"),
      ...said,
    },
  });
  const figure = await db.planFigure.findFirstOrThrow({ where: { siteId } });
  const lines = await db.line.findMany({ where: { siteId }, orderBy: { code: "asc" } });
  const [first, then] = [lines[0]?.id ?? "", lines[1]?.id ?? ""];
  const order = await db.planPrecedence.upsert({
    where: { firstId_thenId: { firstId: first, thenId: then } },
    create: { firstId: first, thenId: then, reason: "of a test", ...said },
    update: {},
  });
  const acceptance = await db.riskAcceptance.create({
    data: {
      ...{ lineId, acceptedBy: "Works manager", acceptedOn: day("2026-11-01"), until: day("2027-11-01") },
      ...{ reason: "of a test", recordedBy: "of a test" },
    },
  });
  const duty = await db.obligation.create({
    data: {
      siteId,
      lineId,
      kind: "safety",
      title: "Guards of KAR",
      dueOn: day("2027-05-01"),
      source: "of a test",
      evidence: "documented",
      recordedOn: day("2026-01-01"),
    },
  });
  return {
    ...{
      planId: plan.id,
      planLineId: plan.lines[0]?.id,
      runId: run.id,
      windowId: window.id,
      freezeId: freeze.id,
    },
    ...{ figureId: figure.id, precedenceId: order.id, firstId: then, thenId: first, regionId: null },
    ...{ acceptanceId: acceptance.id, obligationId: duty.id },
  };
}

async function makeShelf({ siteId, toSiteId, partId, lotId, machineId }: Where) {
  const db = database();
  const repair = await db.repairOrder.findFirstOrThrow({ where: { siteId }, orderBy: { id: "asc" } });
  const transfer = await db.transfer.create({
    data: { partId, fromSiteId: siteId, toSiteId, lotId, bin: "R1", revision: "A", pieces: 1 },
  });
  const care = await db.storageCare.create({
    data: {
      siteId,
      partId,
      lotId,
      kind: "power_up",
      doneOn: day("2026-11-01"),
      doneBy: "Store",
      pieces: 1,
      steps: { lots: [], holds: [] },
    },
  });
  const count = await db.stockCount.create({
    data: {
      ...{ siteId, reference: "KAR-C1", limitEuro: "500", openedOn: day("2026-11-29"), openedBy: "Store" },
      lines: {
        create: [
          { lotId, partId, bin: "R1" },
          { bin: "R2", plate: "found" },
        ],
      },
    },
    include: { lines: true },
  });
  const { controllerId } = await db.machine.findUniqueOrThrow({ where: { id: machineId } });
  const backup = await db.backup.findFirst({ where: { controllerId: controllerId ?? "" } });
  const contact = await db.contact.findFirst({ where: { siteId } });
  return {
    ...{ orderId: repair.id, transferId: transfer.id, careId: care.id, toSiteId, countId: count.id },
    ...{
      countLineId: count.lines.find((line) => line.lotId)?.id,
      foundLineId: count.lines.find((line) => !line.lotId)?.id,
    },
    ...{ backupId: backup?.id, contactId: contact?.id },
  };
}

async function makeFiles({ siteId, partId, familyId }: Where) {
  const db = database();
  const source = await db.importSource.create({ data: { siteId, name: "Store list of KAR" } });
  const word = await db.learnedWord.create({
    data: {
      ...{ sourceId: source.id, kind: "line", written: "x", folded: "x", meaning: partId },
      ...{ decidedBy: "of a test", decidedOn: day("2026-11-01") },
    },
  });
  await db.sourceReading.create({
    data: {
      ...{ sourceId: source.id, register: "stock", version: 1, headers: "part" },
      ...{ mapping: {}, answers: {}, changedBy: "of a test" },
    },
  });
  const [batchId, spareBatchId] = [await makeBatch(source.id), await makeBatch(source.id)];
  const loadedBatchId = await makeBatch(source.id, "committed");
  const readBatchId = await makeBatch(source.id);
  await db.importBatch.update({ where: { id: readBatchId }, data: { work: "reading", beatAt: new Date() } });
  await db.importProblem.create({
    data: {
      ...{ batchId: loadedBatchId, place: 0, rowNumber: 2, severity: "error", waits: true, found: "" },
      ...{ problem: "of a test", remedy: "of a test" },
    },
  });
  const alias = await db.partAlias.create({
    data: { siteId, partId, alias: "of a test", decidedBy: "of a test", decidedOn: day("2026-11-01") },
  });
  const document = {
    ...{ asOf: "2026-11-30", basis: {}, family: { id: familyId, maker: "Brindlewick", name: "Of a test" } },
    ...{ sites: ["KAR"], everySite: false, choice: FIRST_CHOICE, terms: BUY_TERMS, lastOrderOn: null },
    ...{
      orderByOn: null,
      units: 0,
      plannedShare: 0,
      unpriced: [],
      prices: [],
      cases: [],
      shelves: [],
      lastBatch: [],
    },
  };
  const decision = await db.buyDecision.create({
    data: {
      ...{
        familyId,
        siteIds: [siteId],
        decidedOn: day("2026-11-01"),
        decidedBy: "of a test",
        sheetHash: "0",
      },
      sheet: JSON.stringify({
        keptOn: "2026-11-01",
        names: "of a test",
        quantity: 0,
        quantities: [],
        document,
      }),
    },
  });
  const notice = await db.notice.findFirstOrThrow({ orderBy: { id: "asc" } });
  const bytes = new TextEncoder().encode("1");
  await db.notice.update({
    where: { id: notice.id },
    data: { fileName: "notice.txt", fileBytes: bytes, fileHash: hashOf("1") },
  });
  return {
    ...{
      sourceId: source.id,
      wordId: word.id,
      batchId,
      spareBatchId,
      loadedBatchId,
      readBatchId,
      aliasId: alias.id,
      decisionId: decision.id,
    },
    ...{ noticeId: notice.id },
  };
}

async function makeBatch(sourceId: string, state: "staged" | "committed" = "staged"): Promise<string> {
  const db = database();
  const file = await db.importFile.create({ data: { hash: "0".repeat(64), size: 0 } });
  const batch = await db.importBatch.create({
    data: {
      ...{
        register: "stock",
        fileName: "shelf.csv",
        fileHash: "0".repeat(64),
        fileId: file.id,
        sourceId,
        state,
      },
      ...{ mapping: {}, dialect: {}, createdBy: "somebody else" },
    },
  });
  return batch.id;
}
