import "server-only";
import type { Transaction } from "@/lib/data/change";
import { keyOf } from "@/lib/intake/intents/intent";
import type { Surroundings } from "@/lib/intake/intents/registerIntents";
import type { KeyedRegister } from "@/lib/intake/registers";
import { UnmatchedCollector, type UnmatchedName } from "@/lib/intake/unmatched";

/** Collects the names of a file that nothing on record is called. */
export async function collectorFor(
  tx: Transaction,
  register: KeyedRegister,
  { catalogue, siteOfLine }: Surroundings,
): Promise<UnmatchedCollector> {
  const machines = await tx.machine.findMany({ select: { code: true, line: { select: { code: true } } } });
  const keys = new Set(machines.map(({ code, line }) => keyOf(line.code, code)));
  return new UnmatchedCollector(register, {
    catalogue,
    hasLine: (code) => siteOfLine(code) !== null,
    hasMachine: (key) => keys.has(key),
  });
}

const ROWS_A_STATEMENT = 1000;

/** Keeps what was collected of a batch in place of what an earlier reading found. */
export async function keepUnmatched(
  tx: Transaction,
  batchId: string,
  names: readonly UnmatchedName[],
): Promise<void> {
  await tx.unmatchedName.deleteMany({ where: { batchId } });
  for (let at = 0; at < names.length; at += ROWS_A_STATEMENT)
    await tx.unmatchedName.createMany({
      data: names.slice(at, at + ROWS_A_STATEMENT).map((name) => ({ ...name, batchId })),
      skipDuplicates: true,
    });
}
