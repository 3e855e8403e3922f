import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import type { Result } from "@/lib/kernel/result";
import type { Prisma } from "@/prisma/generated/client";

/** What the audit keeps of one changed row. */
export interface Deeded {
  readonly deed: string;
  readonly entity: string;
  readonly entityId: string;
  readonly siteId?: string | null;
  readonly before?: Prisma.InputJsonValue;
  readonly after?: Prisma.InputJsonValue;
}

export type Transaction = Prisma.TransactionClient;

/** What no evaluation reads; a change of these alone leaves every stored figure right. */
const BESIDE_THE_FIGURES: ReadonlySet<string> = new Set([
  "User",
  "Plan",
  "PlanLine",
  "Project",
  "CostEntry",
  "Milestone",
  "AxisRecord",
  "AxisEntry",
  // Binds whatever the loss is; nothing weighs it against money.
  "Obligation",
  // A version that was written is not yet in use; taking it into use is a change of the setting.
  "AssumptionSet",
]);

const LONGEST_CHANGE_MS = 120_000;

/**
 * Runs a change in one transaction with its audit entries and a new data version.
 *
 * A refusal undoes what was written before it. Nothing recorded means nothing was changed: the version
 * stays, so what was computed still holds.
 */
export async function change<T, E>(
  actor: Actor,
  run: (tx: Transaction, record: (deed: Deeded) => void) => Promise<Result<T, E>>,
): Promise<Result<T, E>> {
  try {
    return await database().$transaction(
      async (tx) => {
        const deeds: Deeded[] = [];
        const result = await run(tx, (deed) => deeds.push(deed));
        if (!result.ok) throw new Refused(result);
        if (deeds.length > 0) await keep(tx, actor, deeds);
        return result;
      },
      { timeout: LONGEST_CHANGE_MS, maxWait: 10_000 },
    );
  } catch (error) {
    if (error instanceof Refused) return error.result as Result<T, E>;
    throw error;
  }
}

/** Carries a refusal out of the transaction, so that the database rolls back. */
class Refused extends Error {
  constructor(readonly result: unknown) {
    super("refused");
  }
}

async function keep(tx: Transaction, actor: Actor, deeds: readonly Deeded[]): Promise<void> {
  await tx.auditEntry.createMany({ data: deeds.map((deed) => ({ ...deed, userId: actor.userId })) });
  if (deeds.every(({ entity }) => BESIDE_THE_FIGURES.has(entity))) return;
  await tx.dataVersion.update({ where: { id: 1 }, data: { version: { increment: 1 } } });
}

/**
 * Keeps the data still until the transaction ends: no other change commits and no other evaluation starts.
 *
 * Each change raises the version before it commits, so holding the row is enough.
 */
export async function holdData(tx: Transaction): Promise<void> {
  await tx.$queryRaw`SELECT "version" FROM "DataVersion" FOR UPDATE`;
}
