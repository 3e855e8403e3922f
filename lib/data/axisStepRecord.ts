import "server-only";
import type { Transaction } from "@/lib/data/change";
import { type RecordedStep, validatedByRecord } from "@/lib/projects/axisSteps";
import type { AxisStepKind } from "@/lib/schema/axisStep";

interface HeldRecord {
  readonly id: string;
  readonly projectId: string;
  readonly axisId: string;
}

/** Makes the axis validated and accepted where its record says so, and neither where it does not. */
export async function followRecord(tx: Transaction, { id, projectId, axisId }: HeldRecord): Promise<void> {
  const { acceptedOn, acceptedBy, entries } = await tx.axisRecord.findUniqueOrThrow({
    where: { id },
    include: { entries: true },
  });
  const read = Object.fromEntries(
    entries.map((entry) => [entry.checkId, { ...entry, on: entry.on?.toISOString().slice(0, 10) ?? null }]),
  );
  await follow(tx, { projectId, axisId, step: "validated" }, validatedByRecord(read));
  const accepted =
    acceptedOn === null ? null : { on: acceptedOn.toISOString().slice(0, 10), by: acceptedBy ?? "" };
  await follow(tx, { projectId, axisId, step: "accepted" }, accepted);
}

interface StepPlace {
  readonly projectId: string;
  readonly axisId: string;
  readonly step: AxisStepKind;
}

async function follow(tx: Transaction, place: StepPlace, done: RecordedStep | null): Promise<void> {
  if (done === null) {
    await tx.axisStep.deleteMany({ where: place });
    return;
  }
  const said = { doneOn: new Date(`${done.on}T00:00:00Z`), doneBy: done.by, recordedBy: done.by };
  await tx.axisStep.upsert({
    where: { projectId_axisId_step: place },
    create: { ...place, ...said },
    update: said,
  });
}
