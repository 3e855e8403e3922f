import "server-only";
import { createHash } from "node:crypto";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { change, holdData } from "@/lib/data/change";
import { database } from "@/lib/data/client";
import { importSites, openBatch, visibleBatches } from "@/lib/data/intake/batch";
import { stockAlone } from "@/lib/data/intake/stockAlone";
import { takeBack } from "@/lib/data/intake/takeBack";
import { write } from "@/lib/data/intake/write";
import { dialectOf, openRegister } from "@/lib/intake/openRegister";
import { isRegisterKey, REGISTERS, type RegisterKey } from "@/lib/intake/registers";
import { openQuestions, settleDialect } from "@/lib/intake/settleDialect";
import { headersKey, type Mapping, toMapping } from "@/lib/intake/suggestMapping";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { ChooseReading, CommitBatch, UndoBatch } from "@/lib/schema/import";
import type { ImportBatch, Prisma } from "@/prisma/generated/client";

const gone: Refusal = {
  code: "missing",
  reason: "There is no such file waiting. It may have been loaded or taken back meanwhile; look at the list.",
};

const unanswered: Refusal = {
  code: "invalid",
  reason:
    "The file can be read in two ways. Say first how it writes its numbers and dates; nothing was loaded.",
};

/** A file as a person hands it in. */
export interface HandedIn {
  readonly register: RegisterKey;
  readonly fileName: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

/** Keeps a file as handed in, with what its columns most likely are. Nothing of it is taken over yet. */
export async function stageImport(
  actor: Actor,
  file: HandedIn,
): Promise<Result<{ batchId: string }, Refusal>> {
  const register = REGISTERS[file.register];
  const opened = await openRegister(file.bytes, register);
  if (!opened.ok) return err({ code: "invalid", reason: `${file.fileName}: ${opened.error}` });
  const { body, suggestions } = opened.value;
  const known = await database().importMapping.findUnique({
    where: { register_headers: { register: file.register, headers: headersKey(body.headers) } },
    select: { mapping: true },
  });
  const mapping = (known?.mapping as Mapping | undefined) ?? toMapping(suggestions);
  const { proposal } = dialectOf(body, mapping, register);
  const batch = await database().importBatch.create({
    data: {
      register: file.register,
      fileName: file.fileName,
      fileHash: createHash("sha256").update(file.bytes).digest("hex"),
      fileBytes: file.bytes,
      mapping,
      dialect: proposal as unknown as Prisma.InputJsonObject,
      createdBy: actor.userId,
    },
    select: { id: true },
  });
  return ok({ batchId: batch.id });
}

/** Sets which column is which field and how the file is written; remembered for files with the same headers. */
export async function chooseImportReading(
  actor: Actor,
  choice: ChooseReading,
): Promise<Result<null, Refusal>> {
  return database().$transaction(async (tx) => {
    const batch = await tx.importBatch.findFirst({
      where: { id: choice.batchId, state: "staged", ...visibleBatches(actor) },
      select: { id: true, register: true, fileBytes: true },
    });
    if (!batch || !isRegisterKey(batch.register)) return err(gone);
    const register = REGISTERS[batch.register];
    const opened = await openRegister(batch.fileBytes, register);
    if (!opened.ok) return err({ code: "invalid", reason: opened.error });
    const { mapping, answers } = choice;
    // The values are asked again: a column mapped just now may write its numbers in its own way.
    const dialect = settleDialect(dialectOf(opened.value.body, mapping, register), answers);
    await tx.importBatch.update({
      where: { id: batch.id },
      data: { mapping, dialect: dialect as unknown as Prisma.InputJsonObject },
    });
    const headers = headersKey(Object.keys(mapping));
    await tx.importMapping.upsert({
      where: { register_headers: { register: batch.register, headers } },
      create: { register: batch.register, headers, mapping },
      update: { mapping, changedAt: new Date() },
    });
    return ok(null);
  });
}

/** What a load did, in things. */
export interface Loaded {
  readonly added: number;
  readonly changed: number;
  readonly unchanged: number;
  readonly refused: number;
}

/** Takes a staged file over, wholly or not at all; rows with an error and rows left out stay outside. */
export async function commitImport(
  actor: Actor,
  { batchId, leftOut }: CommitBatch,
): Promise<Result<Loaded, Refusal>> {
  return change(actor, async (tx, record) => {
    await holdData(tx);
    const batch = await tx.importBatch.findFirst({
      where: { id: batchId, state: "staged", ...visibleBatches(actor) },
    });
    if (!batch) return err(gone);
    const allowedSites = await importSites(tx, actor);
    const { examination, finding, dialect } = await openBatch(tx, batch, {
      allowedSites,
      day: today(),
      leftOut,
    });
    if (openQuestions(finding, dialect).length > 0) return err(unanswered);
    const missing = examination.problems.map((one) => one.problem);
    if (missing.length > 0) return err({ code: "invalid", reason: missing.join(" ") });
    const steps = await write(tx, examination.resolved, { batchId, day: today() });
    const loaded: Loaded = {
      added: steps.filter((one) => one.kind === "add").length,
      changed: steps.filter((one) => one.kind === "change").length,
      unchanged: examination.resolved.filter((one) => one.kind === "same").length,
      refused: examination.rows.filter((row) => row.state === "error").length,
    };
    await tx.importBatch.update({
      where: { id: batchId },
      data: { ...loaded, state: "committed", committedAt: new Date(), siteCodes: [...examination.siteCodes] },
    });
    if (steps.length > 0)
      record({ ...entry("import:commit", batch, loaded), ...(await stockAlone(tx, steps)) });
    return ok(loaded);
  });
}

/** Takes a committed file back: what it added goes, what it changed is as before. */
export async function undoImport(actor: Actor, { batchId }: UndoBatch): Promise<Result<Loaded, Refusal>> {
  return change(actor, async (tx, record) => {
    await holdData(tx);
    const batch = await tx.importBatch.findFirst({
      where: { id: batchId, state: "committed", ...visibleBatches(actor) },
    });
    if (!batch) return err(gone);
    const back = await takeBack(tx, batchId);
    if (!back.ok) return back;
    await tx.importBatch.update({ where: { id: batchId }, data: { state: "undone", undoneAt: new Date() } });
    const { added, changed, unchanged, refused } = batch;
    record(entry("import:undo", batch, { added, changed, unchanged, refused }));
    return ok({ added, changed, unchanged, refused });
  });
}

function entry(deed: string, batch: ImportBatch, counts: Loaded) {
  const after = { register: batch.register, fileName: batch.fileName, fileHash: batch.fileHash, ...counts };
  return { deed, entity: "ImportBatch", entityId: batch.id, after };
}

function today(): IsoDate {
  return new Date().toISOString().slice(0, 10);
}
