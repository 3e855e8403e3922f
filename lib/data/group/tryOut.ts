import "server-only";
import type { Actor } from "@/lib/access/actor";
import type { Transaction } from "@/lib/data/change";
import { database } from "@/lib/data/client";
import { assumptionsInUse } from "@/lib/data/group/assumptionsInUse";
import { loadGroupInput } from "@/lib/data/group/loadGroupInput";
import { siteIds } from "@/lib/data/scope";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { Assumptions } from "@/lib/risk/assumptions";
import { evaluate } from "@/lib/risk/evaluate";
import type { GroupInput } from "@/lib/risk/evaluation";
import { type FigureEffect, figureEffect, type SeenLines } from "@/lib/view/figureEffect";

const LONGEST_TRY_MS = 120_000;

/** Carries what was tried out of a transaction that is always rolled back. */
class TriedOut<T> extends Error {
  constructor(readonly result: T) {
    super("tried out");
  }
}

/** Runs something in a transaction and rolls it back, whatever comes of it. */
export async function rolledBack<T>(run: (tx: Transaction) => Promise<T>, client = database()): Promise<T> {
  try {
    return await client.$transaction(
      async (tx): Promise<T> => {
        throw new TriedOut(await run(tx));
      },
      { timeout: LONGEST_TRY_MS, maxWait: 10_000 },
    );
  } catch (error) {
    if (error instanceof TriedOut) return error.result as T;
    throw error;
  }
}

/**
 * What a change would do to the figures: made in a transaction, read, and rolled back; nothing is stored.
 *
 * The group is evaluated twice after the transaction ended, so that nobody waits for it.
 *
 * @returns What the change told and the effect at the lines the actor reads, or why it cannot be made.
 */
export async function tryOut<T, E>(
  actor: Actor,
  { asOf, client = database() }: { readonly asOf: IsoDate; readonly client?: ReturnType<typeof database> },
  run: (tx: Transaction) => Promise<Result<T, E>>,
): Promise<Result<{ readonly told: T; readonly effect: FigureEffect }, E>> {
  const tried = await rolledBack(async (tx) => {
    const before = await loadGroupInput(tx, asOf);
    const told = await run(tx);
    return told.ok ? ok({ told: told.value, before, after: await loadGroupInput(tx, asOf) }) : told;
  }, client);
  if (!tried.ok) return err(tried.error);
  const { told, before, after } = tried.value;
  const { values } = await assumptionsInUse(database());
  return ok({ told, effect: figureEffect(seenBy(actor, before, values), seenBy(actor, after, values)) });
}

function seenBy(actor: Actor, input: GroupInput, assumptions: Assumptions): SeenLines {
  const ids = siteIds(actor, "read")?.in ?? null;
  const lines = input.lines.filter(({ siteId }) => ids === null || ids.includes(siteId));
  const seen = new Set(lines.map(({ id }) => id));
  const results = evaluate(input, assumptions).lines.filter(({ lineId }) => seen.has(lineId));
  return { lines, results };
}
