import { createHash } from "node:crypto";
import { database } from "@/lib/data/client";

/** Rows of every kind of value a table has, and of records the database refuses to change again. */
export async function addOddRows(): Promise<void> {
  const db = database();
  const line = await db.line.findFirstOrThrow({
    orderBy: { code: "asc" },
    select: { id: true, siteId: true },
  });
  const bytes = Buffer.from([0, 255, 10, 13, 34, 44, 92, 128]);
  const hash = createHash("sha256").update(bytes).digest("hex");
  await db.importFile.create({ data: { hash, size: bytes.length, pieces: { create: { place: 0, bytes } } } });
  await db.reportIssue.create({
    data: {
      ...{
        kind: "monthly",
        siteId: line.siteId,
        period: "2026-11",
        asOf: new Date("2026-11-30"),
        dataVersion: 9_007n,
      },
      ...{
        engine: "e",
        assumptions: "a",
        seed: 1,
        issuedBy: "Somebody",
        document: { ž: [1e-7, null, "\u2028"] },
      },
      files: { create: { form: "pdf_a4", hash, bytes } },
    },
  });
  const { id: planId } = await db.plan.create({
    data: {
      ...{
        name: 'Of "all", \\ kinds\n\t',
        year: 2027,
        budget: "1234567.89",
        kind: "board",
        rankedBy: "loss",
      },
      ...{ asOf: new Date("2026-11-30"), dataVersion: 1, engine: "e", createdBy: "x" },
      lines: {
        create: {
          ...{ lineId: line.id, rank: 1, cost: 1, stopLoss: "0.1", score: 50, funded: true },
          slots: { create: { option: "full", slot: "2027-Q1" } },
        },
      },
    },
  });
  await db.plan.update({ where: { id: planId }, data: { frozen: { done: true }, status: "put_forward" } });
  const family = await db.family.findFirstOrThrow({ select: { id: true } });
  const decision = {
    familyId: family.id,
    decidedOn: new Date("2026-11-30"),
    decidedBy: "",
    sheet: "{}",
    sheetHash: hash,
  };
  // The older one points to the newer: rows of one table that need each other in any order.
  const newer = await db.buyDecision.create({ data: { ...decision, siteIds: [line.siteId] } });
  await db.buyDecision.create({ data: { ...decision, siteIds: [], supersededById: newer.id } });
}
