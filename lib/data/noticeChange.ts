import "server-only";
import { createHash } from "node:crypto";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { change, holdData, type Transaction } from "@/lib/data/change";
import { type NoticePlan, type PlannedPart, planNotice } from "@/lib/data/notice/planNotice";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { NoticeFields, RecordNotice, TakeNoticeBack } from "@/lib/schema/notice";
import type { NoticeDates } from "@/lib/view/noticeDates";

const moved: Refusal = {
  code: "conflict",
  reason:
    "The dates or parts on record changed since you looked the notice over. Look it over again; nothing was kept.",
};
const gone: Refusal = { code: "missing", reason: "There is no such notice that stands." };
const decided: Refusal = {
  code: "impossible",
  reason:
    "A decision to buy answers this notice. It stays on record, and so does the notice; record a newer one instead.",
};

/** Records a confirmed notice: statements, successors and the source, in one change. */
export async function keepNotice(
  actor: Actor,
  { fields, basis, source }: RecordNotice,
): Promise<Result<{ noticeId: string }, Refusal>> {
  const today = await readAsOf(actor, undefined);
  const file = source && fileColumns(source.fileName, await source.bytes());
  return change(actor, async (tx, record) => {
    await holdData(tx);
    const plan = await planNotice(tx, fields, today);
    if (!plan.ok)
      return err({
        code: "invalid",
        reason: "Some entries cannot be used. Nothing was kept.",
        fields: plan.error,
      });
    if (plan.value.basis !== basis) return err(moved);
    const { id } = await tx.notice.create({
      data: {
        ...columns(fields, plan.value.orderByOn),
        ...file,
        recordedOn: dateOf(today),
        recordedBy: actor.name,
      },
    });
    await writeParts(tx, id, { plan: plan.value, fields, today });
    const parts = plan.value.parts.map(({ part, source: said, after }) => ({
      part: part.number,
      said,
      ...after,
    }));
    record({
      ...{ deed: "notice:add", entity: "Notice", entityId: id },
      after: { ...fields, parts, fileHash: file?.fileHash ?? null },
    });
    return ok({ noticeId: id });
  });
}

function fileColumns(fileName: string | null, bytes: Uint8Array<ArrayBuffer>) {
  const fileHash = createHash("sha256").update(bytes).digest("hex");
  return { fileName: fileName ?? "pasted text", fileBytes: bytes, fileHash };
}

function columns(fields: NoticeFields, orderByOn: IsoDate | null) {
  const { noticeOn, lastOrderOn, lastShipOn, repairUntilOn, checkedOn, ...rest } = fields;
  return {
    ...rest,
    ...dateColumns({ noticeOn, lastOrderOn, lastShipOn, repairUntilOn, orderByOn }),
    checkedOn: dateOf(checkedOn),
  };
}

interface Written {
  readonly plan: NoticePlan;
  readonly fields: NoticeFields;
  readonly today: IsoDate;
}

/** One statement for a whole family, one for each other part; a new step to each successor. */
async function writeParts(
  tx: Transaction,
  noticeId: string,
  { plan, fields, today }: Written,
): Promise<void> {
  const facts = new Map<string, string>();
  for (const planned of plan.parts) {
    const owner = planned.byFamily ? { familyId: planned.part.familyId } : { partId: planned.part.id };
    const key = planned.byFamily ? (planned.part.familyId ?? "") : planned.part.id;
    const known = facts.get(key);
    const factId = known ?? (await writeFact(tx, planned, { ...owner, fields, today }));
    facts.set(key, factId);
    const successorRowId = await writeSuccessor(tx, planned, fields.document);
    await tx.noticePart.create({ data: { noticeId, partId: planned.part.id, factId, successorRowId } });
  }
}

async function writeFact(
  tx: Transaction,
  { after, source }: PlannedPart,
  { fields, today, ...owner }: Omit<Written, "plan"> & { familyId?: string | null; partId?: string },
): Promise<string> {
  const { id } = await tx.lifecycleFact.create({
    data: {
      ...{ ...owner, ...dateColumns(after), source, evidence: fields.evidence },
      ...{ checkedOn: dateOf(fields.checkedOn), recordedOn: dateOf(today) },
    },
    select: { id: true },
  });
  return id;
}

async function writeSuccessor(
  tx: Transaction,
  { part, successor }: PlannedPart,
  document: string,
): Promise<string | null> {
  if (!successor || successor.known) return null;
  const { id } = await tx.successor.create({
    data: { partId: part.id, successorId: successor.id, condition: `Named by ${document}; not judged.` },
    select: { id: true },
  });
  return id;
}

/** Takes a notice back with all it wrote; what held before holds again. */
export async function withdrawNotice(
  actor: Actor,
  { noticeId }: TakeNoticeBack,
): Promise<Result<null, Refusal>> {
  return change(actor, async (tx, record) => {
    await holdData(tx);
    const notice = await tx.notice.findFirst({
      where: { id: noticeId, takenBackAt: null },
      include: { parts: true, decisions: { select: { id: true }, take: 1 } },
    });
    if (!notice) return err(gone);
    if (notice.decisions.length > 0) return err(decided);
    const given = (ids: readonly (string | null)[]) => ids.filter((id) => id !== null);
    await tx.lifecycleFact.deleteMany({
      where: { id: { in: given(notice.parts.map((one) => one.factId)) } },
    });
    await tx.successor.deleteMany({
      where: { id: { in: given(notice.parts.map((one) => one.successorRowId)) } },
    });
    await tx.noticePart.updateMany({ where: { noticeId }, data: { factId: null, successorRowId: null } });
    await tx.notice.update({
      where: { id: noticeId },
      data: { takenBackAt: new Date(), takenBackBy: actor.name },
    });
    record({
      ...{ deed: "notice:undo", entity: "Notice", entityId: noticeId },
      before: { document: notice.document },
    });
    return ok(null);
  });
}

const dateOf = (day: string) => new Date(`${day}T00:00:00Z`);

function dateColumns({ noticeOn, lastOrderOn, lastShipOn, repairUntilOn, orderByOn }: NoticeDates) {
  const date = (day: string | null) => (day === null ? null : dateOf(day));
  return {
    ...{ noticeOn: date(noticeOn), lastOrderOn: date(lastOrderOn), lastShipOn: date(lastShipOn) },
    ...{ repairUntilOn: date(repairUntilOn), orderByOn: date(orderByOn) },
  };
}
