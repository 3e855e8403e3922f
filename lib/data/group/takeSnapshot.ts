import "server-only";
import { holdData, type Transaction } from "@/lib/data/change";
import { database } from "@/lib/data/client";
import { assumptionsInUse } from "@/lib/data/group/assumptionsInUse";
import { loadGroupInput } from "@/lib/data/group/loadGroupInput";
import { freezeInput, resultHash, thaw } from "@/lib/data/group/snapshotBytes";
import { keepGapCounts } from "@/lib/data/quality/keepGapCounts";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { ENGINE, evaluate } from "@/lib/risk/evaluate";
import type { Prisma } from "@/prisma/generated/client";

const LONGEST_MS = 120_000;

export interface TakenSnapshot {
  readonly id: string;
  /** False: there was one of that day already, and it stands. */
  readonly isNew: boolean;
}

/** Who asked for a snapshot; null is the weekly one. */
export type Taker = { readonly userId: string; readonly name: string } | null;

/**
 * Freezes what the evaluation reads on a day, once for a day and engine, whoever asks at the same time.
 *
 * The lock on the data lets one taker in after the other, in this and in other processes; the key of the table is the
 * last word. The hash is of the result computed from the stored bytes, so anyone can compute it again.
 */
export async function takeSnapshot(asOf: IsoDate, taker: Taker): Promise<TakenSnapshot> {
  return database().$transaction(
    async (tx) => {
      await holdData(tx);
      const day = new Date(`${asOf}T00:00:00Z`);
      const there = await tx.snapshot.findUnique({
        where: { asOf_engine: { asOf: day, engine: ENGINE } },
        select: { id: true },
      });
      return there ? { id: there.id, isNew: false } : { id: await write(tx, asOf, taker), isNew: true };
    },
    { timeout: LONGEST_MS, maxWait: LONGEST_MS },
  );
}

async function write(tx: Transaction, asOf: IsoDate, taker: Taker): Promise<string> {
  const { version } = await tx.dataVersion.findUniqueOrThrow({ where: { id: 1 } });
  const input = freezeInput(await loadGroupInput(tx, asOf));
  const assumptions = (await assumptionsInUse(tx)).values as unknown as Prisma.InputJsonValue;
  const frozen = thaw({ input, assumptions });
  const hash = resultHash(evaluate(frozen.input, frozen.assumptions));
  const { id } = await tx.snapshot.create({
    data: {
      asOf: new Date(`${asOf}T00:00:00Z`),
      engine: ENGINE,
      dataVersion: version,
      input,
      assumptions,
      resultHash: hash,
      takenBy: taker?.name ?? null,
    },
    select: { id: true },
  });
  await keepGapCounts(tx, asOf);
  await tx.auditEntry.create({
    data: {
      userId: taker?.userId ?? null,
      deed: "snapshot:take",
      entity: "Snapshot",
      entityId: id,
      after: { asOf, engine: ENGINE, dataVersion: Number(version), resultHash: hash },
    },
  });
  return id;
}
