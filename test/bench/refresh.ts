import { database } from "@/lib/data/client";
import { assumptionsInUse } from "@/lib/data/group/assumptionsInUse";
import { currentEvaluation } from "@/lib/data/group/currentEvaluation";
import { loadGroupInput } from "@/lib/data/group/loadGroupInput";
import { changeStock } from "@/lib/data/stockChange";
import { drawRanks } from "@/lib/risk/draws/drawRanks";
import { makeActor } from "@/test/support/actors";

const STEPS = 9;

async function seconds(run: () => Promise<unknown>): Promise<number> {
  const from = performance.now();
  await run();
  return (performance.now() - from) / 1000;
}

/** Seconds from nothing stored and nothing in mind to the evaluation stored: read, computed, drawn and written. */
export async function measureRefresh(asOf: string): Promise<number> {
  await database().evaluation.deleteMany();
  delete (globalThis as { ebblineGroup?: unknown }).ebblineGroup;
  return seconds(() => currentEvaluation(asOf));
}

/** Seconds to the evaluation after each of some changes of stock, by the way a person changes it. */
export async function measureSteps(asOf: string): Promise<number[]> {
  const actor = await makeActor("planner");
  const lots = await database().stockLot.findMany({
    where: { state: "usable", quantity: { gt: 0 } },
    orderBy: { id: "asc" },
    take: STEPS,
  });
  const out: number[] = [];
  for (const { id, state, quantity, lastPoweredOn, countedOn } of lots) {
    const dayOf = (date: Date | null) => date?.toISOString().slice(0, 10) ?? null;
    const seen = { state, quantity, lastPoweredOn: dayOf(lastPoweredOn), countedOn: dayOf(countedOn) };
    const changed = await changeStock(actor, { lotId: id, seen, wanted: { ...seen, quantity: 0 } });
    if (!changed.ok) throw new Error(changed.error.reason);
    out.push(await seconds(() => currentEvaluation(asOf)));
  }
  return out;
}

/** Draws of a refresh, and those asked for in one piece. */
export const DRAWS_OF_REFRESH = 400;
const MANY_DRAWS = 1000;

/** Seconds to draw the ranking of the group as often as a refresh does, and a thousand times. */
export async function measureDraws(asOf: string): Promise<{ few: number; many: number }> {
  const input = await loadGroupInput(database(), asOf);
  const { values } = await assumptionsInUse(database());
  const draw = (draws: number) => seconds(async () => drawRanks(input, values, { draws, seed: 1 }));
  return { few: await draw(DRAWS_OF_REFRESH), many: await draw(MANY_DRAWS) };
}
