import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { change, type Transaction } from "@/lib/data/change";
import { heldCutover, heldStep, stepsKept } from "@/lib/data/closing/heldCutover";
import { instantOf } from "@/lib/data/event/place";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { AddStep, ChangeStep, ClockStep, DropStep } from "@/lib/schema/cutover";
import type { CutoverStep } from "@/prisma/generated/client";

const begun: Refusal = {
  code: "impossible",
  reason: "This step has begun, so it is part of what happened. Take its times away first.",
};

export interface StepMark {
  readonly stepId: string;
  readonly version: number;
}

const deedOf = (deed: string, entityId: string, siteId: string) => ({
  ...{ deed, entity: "CutoverStep", entityId, siteId },
});

/** Adds a step to a cutover. */
export function addCutoverStep(
  actor: Actor,
  { cutoverId, ...said }: AddStep,
): Promise<Result<StepMark, Refusal>> {
  return change(actor, async (tx, record) => {
    const held = await heldCutover(tx, actor, { cutoverId });
    if (!held.ok) return held;
    const { id: stepId, version } = await tx.cutoverStep.create({ data: { cutoverId, ...said } });
    record({ ...deedOf("cutover:step", stepId, held.value.project.siteId), after: { cutoverId, ...said } });
    return ok({ stepId, version });
  });
}

/** Writes what is planned of a step, if nobody else did meanwhile. */
export function changeCutoverStep(
  actor: Actor,
  { stepId, version, ...said }: ChangeStep,
): Promise<Result<StepMark, Refusal>> {
  return change(actor, async (tx, record) => {
    const held = await heldStep(tx, actor, { stepId, version });
    if (!held.ok) return held;
    const { step, project } = held.value;
    await tx.cutoverStep.update({ where: { id: stepId }, data: { ...said, version: { increment: 1 } } });
    record({ ...deedOf("cutover:step", stepId, project.siteId), ...{ before: keptOf(step), after: said } });
    return ok({ stepId, version: version + 1 });
  });
}

/** Takes a step away that has not begun; the audit keeps it. */
export function dropCutoverStep(actor: Actor, asked: DropStep): Promise<Result<null, Refusal>> {
  return change(actor, async (tx, record) => {
    const held = await heldStep(tx, actor, asked);
    if (!held.ok) return held;
    const { step, project } = held.value;
    if (step.startedAt !== null) return err(begun);
    await tx.cutoverStep.delete({ where: { id: step.id } });
    record({ ...deedOf("cutover:step", step.id, project.siteId), before: keptOf(step) });
    return ok(null);
  });
}

/** Writes when a step began and ended, by the site's clock. */
export function clockCutoverStep(
  actor: Actor,
  { stepId, version, startedAt, endedAt }: ClockStep,
): Promise<Result<StepMark, Refusal>> {
  return change(actor, async (tx, record) => {
    const held = await heldStep(tx, actor, { stepId, version });
    if (!held.ok) return held;
    const { step, project } = held.value;
    const read = (reading: string | null) => readingOf(tx, project.siteId, reading);
    const times = { startedAt: await read(startedAt), endedAt: await read(endedAt) };
    // In the night the clocks go back, a later reading can be an earlier instant.
    if (times.startedAt !== null && times.endedAt !== null && times.endedAt < times.startedAt)
      return err(backwards);
    await tx.cutoverStep.update({ where: { id: stepId }, data: { ...times, version: { increment: 1 } } });
    record({
      ...deedOf("cutover:clock", stepId, project.siteId),
      ...{ before: keptOf(step), after: { startedAt, endedAt } },
    });
    return ok({ stepId, version: version + 1 });
  });
}

const backwards: Refusal = {
  code: "invalid",
  reason: "By the site's clock it would be over before it began. Nothing was kept.",
  fields: { endedAt: "Before it began." },
};

async function readingOf(tx: Transaction, siteId: string, reading: string | null): Promise<Date | null> {
  return reading === null ? null : instantOf(tx, siteId, reading);
}

const keptOf = (step: CutoverStep) => stepsKept([step])[0] ?? {};
