import "server-only";
import { createHash } from "node:crypto";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { change, type Transaction } from "@/lib/data/change";
import { database } from "@/lib/data/client";
import { findProjectFile } from "@/lib/data/project";
import { entryOf } from "@/lib/data/projectCost";
import { loadRates } from "@/lib/data/projectRates";
import { atSites } from "@/lib/data/scope";
import { type CostFile, readCosts } from "@/lib/intake/costs/readCosts";
import type { DialectAnswers } from "@/lib/intake/settleDialect";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { TakeBackCosts } from "@/lib/schema/projectMoney";
import { type CostImportRow, type CostPreview, judgeCosts } from "@/lib/view/costImport";
import type { Prisma } from "@/prisma/generated/client";

const missing: Refusal = { code: "missing", reason: "There is no such project that you may change." };
const gone: Refusal = {
  code: "missing",
  reason: "There is no such file to take back. It may have been taken back meanwhile; load the page again.",
};

/** A file of orders and invoices as a person hands it in. */
export interface HandedCosts {
  readonly projectId: string;
  readonly fileName: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly answers: DialectAnswers;
}

/** What a file would add to a project's ledger, row by row; nothing is taken over. */
export async function previewCosts(actor: Actor, handed: HandedCosts): Promise<Result<CostPreview, Refusal>> {
  const judged = await judge(actor, database(), handed);
  return judged.ok ? ok(judged.value.preview) : judged;
}

/** Takes the usable rows of a file over, wholly or not at all; rows with an error stay outside, known rows change nothing. */
export async function importCosts(
  actor: Actor,
  handed: HandedCosts,
): Promise<Result<{ importId: string; added: number }, Refusal>> {
  return change(actor, async (tx, record) => {
    // Held so that the same file handed in twice at once is taken over once.
    await tx.$queryRaw`SELECT "id" FROM "Project" WHERE "id" = ${handed.projectId}::uuid FOR UPDATE`;
    const judged = await judge(actor, tx, handed);
    if (!judged.ok) return judged;
    const { preview, entries, siteId } = judged.value;
    const unusable = preview.problems[0] ?? (preview.questions.length > 0 ? OPEN : null);
    if (unusable !== null) return err({ code: "invalid", reason: unusable });
    if (entries.length === 0)
      return err({ code: "impossible", reason: "The file holds nothing that is not in the ledger already." });
    const { projectId, fileName, bytes } = handed;
    const { id: importId } = await tx.costImport.create({
      data: {
        ...{ projectId, fileName, added: entries.length, createdBy: actor.name },
        fileHash: createHash("sha256").update(bytes).digest("hex"),
      },
    });
    await tx.costEntry.createMany({ data: entries.map((entry) => ({ ...entry, projectId, importId })) });
    record({
      ...{ deed: "project:costs", entity: "CostImport", entityId: importId, siteId },
      after: { fileName, added: entries.length, references: entries.map(({ reference }) => reference) },
    });
    return ok({ importId, added: entries.length });
  });
}

const OPEN =
  "The file can be read in two ways. Say first how it writes its numbers and dates; nothing was taken over.";

type NewEntry = Omit<Prisma.CostEntryCreateManyInput, "projectId">;

interface Judged {
  readonly preview: CostPreview;
  readonly entries: readonly NewEntry[];
  readonly siteId: string;
}

async function judge(
  actor: Actor,
  tx: Transaction,
  { projectId, bytes, answers, fileName }: HandedCosts,
): Promise<Result<Judged, Refusal>> {
  const project = await findProjectFile(actor, tx, { id: projectId, deed: "project:write" });
  if (!project) return err(missing);
  const { currency } = project;
  const file: Result<CostFile, string> = await readCosts(bytes, { currency, answers });
  if (!file.ok)
    return err({ code: "invalid", reason: `${fileName}: ${file.error}`, fields: { file: file.error } });
  const rates = await loadRates(actor, tx);
  const preview = judgeCosts(file.value, project);
  const made = preview.rows.map((row) => {
    if (row.state !== "new" || row.cost === null) return { row, entry: null };
    const entry = entryOf(actor, row.cost, { wanted: currency, rates });
    return entry.ok ? { row, entry: entry.value } : { row: refused(row, entry.error.reason), entry: null };
  });
  return ok({
    preview: { ...preview, rows: made.map(({ row }) => row) },
    entries: made.flatMap(({ entry }) => entry ?? []),
    siteId: project.siteId,
  });
}

const refused = (row: CostImportRow, reason: string): CostImportRow => ({
  ...row,
  state: "error",
  words: [...row.words, reason],
});

/** Takes a file back: every entry it added that is still there goes, in one step. */
export async function takeBackCosts(
  actor: Actor,
  { projectId, importId }: TakeBackCosts,
): Promise<Result<{ removed: number }, Refusal>> {
  return change(actor, async (tx, record) => {
    const project = await tx.project.findFirst({
      where: { id: projectId, ...atSites(actor, "project:write") },
      select: { siteId: true },
    });
    if (!project) return err(missing);
    const { count: marked } = await tx.costImport.updateMany({
      where: { id: importId, projectId, takenBackAt: null },
      data: { takenBackAt: new Date(), takenBackBy: actor.name },
    });
    if (marked === 0) return err(gone);
    const entries = await tx.costEntry.findMany({ where: { importId }, select: { reference: true } });
    const { count: removed } = await tx.costEntry.deleteMany({ where: { importId } });
    record({
      ...{ deed: "project:costs", entity: "CostImport", entityId: importId, siteId: project.siteId },
      before: { removed, references: entries.map(({ reference }) => reference) },
    });
    return ok({ removed });
  });
}

/** A file taken over, as the page lists it. */
export interface TakenFile {
  readonly id: string;
  readonly fileName: string;
  readonly added: number;
  readonly createdBy: string;
  readonly createdOn: string;
  readonly takenBackBy: string | null;
}

/** The files of orders and invoices taken over for a project, newest first. */
export async function readCostImports(actor: Actor, code: string): Promise<TakenFile[]> {
  const files = await database().costImport.findMany({
    where: { project: { code, ...atSites(actor, "read") } },
    orderBy: [{ createdAt: "desc" }, { id: "desc" }],
  });
  return files.map(({ id, fileName, added, createdBy, createdAt, takenBackBy }) => ({
    ...{ id, fileName, added, createdBy, takenBackBy, createdOn: createdAt.toISOString().slice(0, 10) },
  }));
}
