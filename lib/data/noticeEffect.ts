import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { database } from "@/lib/data/client";
import { assumptionsInUse } from "@/lib/data/group/assumptionsInUse";
import { loadGroupInput } from "@/lib/data/group/loadGroupInput";
import { loadNamedParts, type NoticePlan, type PlannedPart, planNotice } from "@/lib/data/notice/planNotice";
import { siteIds } from "@/lib/data/scope";
import { type NoticeProposal, readNotice } from "@/lib/intake/notice/readNotice";
import { textOfFile } from "@/lib/intake/notice/tableText";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { err, ok, type Result } from "@/lib/kernel/result";
import { type SupplyStage, supplyStage } from "@/lib/lifecycle/supplyStage";
import { evaluateStaged, reevaluate, type StagedEvaluation } from "@/lib/risk/evaluate";
import type { GroupResult } from "@/lib/risk/evaluation";
import type { NoticeFields, NoticeSource } from "@/lib/schema/notice";
import { type NoticePreview, noticePreview, type PreviewedPart } from "@/lib/view/noticePreview";

/** What the text or file of a notice seems to say; nothing is kept. */
export async function proposeNotice(
  _actor: Actor,
  { fileName, bytes }: NoticeSource,
): Promise<Result<NoticeProposal, Refusal>> {
  const read = await bytes();
  const text = await textOfFile(fileName ?? "pasted.txt", read);
  if (!text.ok) return err({ code: "invalid", reason: text.error, fields: { file: text.error } });
  return ok(readNotice(text.value, await loadNamedParts(database())));
}

/** What recording a notice would change at the person's sites; computed now, stored nowhere. */
export async function previewNotice(
  actor: Actor,
  fields: NoticeFields,
): Promise<Result<NoticePreview, Refusal>> {
  const today = await readAsOf(actor, undefined);
  const plan = await planNotice(database(), fields, today);
  if (!plan.ok) return err({ code: "invalid", reason: "Some entries cannot be used.", fields: plan.error });
  const input = await loadGroupInput(database(), today);
  const now = evaluateStaged(input, (await assumptionsInUse(database())).values);
  const then = reevaluate(now, changedPools(now, plan.value, fields.checkedOn));
  const sites = await database().site.findMany({
    where: { id: siteIds(actor, "read") ?? {} },
    select: { id: true, code: true },
  });
  const seen = new Map(sites.map(({ id, code }) => [id, code]));
  const parts = plan.value.parts.map((part) => previewPart(part, now, { today, fields, seen }));
  const shown = new Set(input.lines.filter(({ siteId }) => seen.has(siteId)).map(({ id }) => id));
  return ok(
    noticePreview({
      ...{
        asOf: today,
        parts,
        plan: withoutParts(plan.value),
        everySite: siteIds(actor, "read") === undefined,
      },
      lines: input.lines
        .filter(({ id }) => shown.has(id))
        .map(({ id, code, siteId }) => ({ id, code, siteCode: seen.get(siteId) ?? "" })),
      installed: input.installed.filter(({ lineId }) => shown.has(lineId)),
      before: ofLines(now.result, shown),
      after: ofLines(then.result, shown),
    }),
  );
}

const ofLines = ({ lines }: GroupResult, shown: ReadonlySet<string>) =>
  lines.filter(({ lineId }) => shown.has(lineId)).map(({ lineId, stopLoss }) => ({ lineId, stopLoss }));

const withoutParts = ({ empty, withoutSuccessor, orderByOn, basis }: NoticePlan) => ({
  ...{ empty, withoutSuccessor, orderByOn, basis },
});

/** The pools of the parts with the dates as they would be; a part nowhere installed or stocked has none. */
function changedPools({ pools }: StagedEvaluation, { parts }: NoticePlan, checkedOn: IsoDate) {
  return parts.flatMap(({ part, after }) => {
    const pool = pools.get(part.id)?.pool;
    return pool ? [{ ...pool, dates: { ...after, checkedOn } }] : [];
  });
}

interface Look {
  readonly today: IsoDate;
  readonly fields: NoticeFields;
  readonly seen: ReadonlyMap<string, string>;
}

function previewPart(planned: PlannedPart, { pools }: StagedEvaluation, look: Look): PreviewedPart {
  const { part, before, after, source, byFamily, successor } = planned;
  const usable = Object.entries(pools.get(part.id)?.result.usableBySite ?? {});
  const stage = (dates: typeof after, checkedOn: IsoDate | null): SupplyStage =>
    supplyStage({ ...datesAlone(dates), checkedOn }, look.today);
  return {
    ...{ id: part.id, number: part.number, family: part.family, before, after, source, byFamily },
    successor: successor && { number: successor.number, known: successor.known },
    usable: usable.reduce((sum, [siteId, one]) => sum + (look.seen.has(siteId) ? one.usable : 0), 0),
    stageBefore: before ? stage(before, before.checkedOn) : "undated",
    stageAfter: stage(after, look.fields.checkedOn),
  };
}

function datesAlone({ noticeOn, lastOrderOn, lastShipOn, repairUntilOn, orderByOn }: PlannedPart["after"]) {
  return { noticeOn, lastOrderOn, lastShipOn, repairUntilOn, orderByOn };
}
