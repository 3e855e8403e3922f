import "server-only";
import { randomUUID } from "node:crypto";
import type { Transaction } from "@/lib/data/change";
import type { CopyRows } from "@/lib/data/intake/bulk";
import type { Resolved } from "@/lib/data/intake/resolve";
import { insertRows, updateRow } from "@/lib/data/intake/writers";
import { ENTITIES } from "@/lib/intake/intents/intent";
import type { IsoDate } from "@/lib/kernel/isoDate";

interface Writing {
  readonly batchId: string;
  readonly day: IsoDate;
  /** Number of steps the pieces of the file before this one wrote. */
  readonly from?: number;
  /** How to write many rows at once, where the transaction can. */
  readonly copy?: CopyRows;
}

/** Writes what a file adds and changes, parents first, and keeps each step so that it can be taken back. */
export async function write(
  tx: Transaction,
  resolved: readonly Resolved[],
  { batchId, day, from = 0, copy }: Writing,
): Promise<readonly Resolved[]> {
  const steps = ENTITIES.flatMap((entity) =>
    ordered(
      resolved.filter((one) => one.entity === entity),
      day,
    ),
  );
  for (const entity of ENTITIES) {
    const own = steps.filter((step) => step.entity === entity);
    for (const step of own) if (step.kind === "change") await updateRow(tx, step, step.after);
    const rows = own.filter((step) => step.kind === "add").map((step) => step.after);
    await insertRows(tx, { entity, rows }, copy ?? null);
  }
  const kept = keptSteps(steps, { batchId, from });
  if (copy) await copy("ImportChange", kept);
  else await keepSteps(tx, kept);
  return steps;
}

/** Columns of a kept step, in the order COPY is given them. */
export const STEP_COLUMNS = [
  ...(["batchId", "sequence", "rowNumber", "entity", "entityId", "before", "after"] as const),
];

/** What is kept of steps so that they can be taken back. */
export function keptSteps(
  steps: readonly Resolved[],
  { batchId, from }: { readonly batchId: string; readonly from: number },
): KeptStep[] {
  return steps.map(({ entity, id, rowNumber, before, after }, index) => ({
    ...{ batchId, sequence: from + index, rowNumber, entity, entityId: id },
    before: before === null ? null : JSON.stringify(before),
    // All fields of an added row come from the file; they stand in the row itself.
    after: before === null ? "{}" : JSON.stringify(after),
  }));
}

interface KeptStep {
  readonly batchId: string;
  readonly sequence: number;
  readonly rowNumber: number;
  readonly entity: string;
  readonly entityId: string;
  readonly before: string | null;
  readonly after: string;
}

async function keepSteps(tx: Transaction, steps: readonly KeptStep[]): Promise<void> {
  await tx.$executeRaw`
    INSERT INTO "ImportChange" ("batchId", "sequence", "rowNumber", "entity", "entityId", "before", "after")
    SELECT "batchId", "sequence", "rowNumber", "entity", "entityId", "before"::jsonb, "after"::jsonb
    FROM jsonb_to_recordset(${JSON.stringify(steps)}::jsonb) AS s("batchId" uuid, "sequence" int, "rowNumber" int,
      "entity" text, "entityId" text, "before" text, "after" text)`;
}

/** A change of unit in a place is the end of one stay and the start of another, the ends written first. */
function ordered(own: readonly Resolved[], day: IsoDate): Resolved[] {
  const steps = own
    .filter((one) => one.kind !== "same")
    .flatMap((one) => (isSwap(one) ? swap(one, day) : [one]));
  return [...steps.filter((one) => one.kind === "change"), ...steps.filter((one) => one.kind === "add")];
}

function isSwap({ entity, kind, after }: Resolved): boolean {
  return entity === "Placement" && kind === "change" && "unitId" in after;
}

function swap(one: Resolved, day: IsoDate): Resolved[] {
  const id = randomUUID();
  return [
    { ...one, before: { untilOn: null }, after: { untilOn: day } },
    {
      ...one,
      id,
      kind: "add",
      before: null,
      after: {
        id,
        unitId: one.after.unitId ?? null,
        positionId: one.parents.positionId ?? null,
        fromOn: day,
      },
    },
  ];
}
