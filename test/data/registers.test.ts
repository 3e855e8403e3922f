import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import type { Actor } from "@/lib/access/actor";
import { commitImport, stageImport } from "@/lib/data/import";
import { readRanking } from "@/lib/data/ranking";
import type { RegisterKey } from "@/lib/intake/registers";
import { LOADING_ORDER } from "@/lib/view/importPattern";
import { load } from "@/seed/load";
import { showcase } from "@/seed/scenarios/showcase/showcase";
import { makeActor } from "@/test/support/actors";
import { freshDatabase } from "@/test/support/database";
import { leaveOutUnregistered } from "@/test/support/leaveOutUnregistered";

const FOLDER = join(import.meta.dirname, "../../seed/registers");
const AS_OF = "2026-11-30";

test("the register files of the demonstration company give its ranking, line by line", async () => {
  const seeded = await withDatabase("registers-seeded", async (url) => {
    await load(url, "showcase", showcase());
    await leaveOutUnregistered(url);
    return rankingOf(await makeActor("viewer"));
  });
  const loaded = await withDatabase("registers-loaded", async () => {
    const planner = await makeActor("planner");
    for (const { key } of LOADING_ORDER) for (const name of filesOf(key)) await loadFile(planner, key, name);
    return rankingOf(planner);
  });
  expect(seeded.size).toBeGreaterThan(20);
  expect([...loaded.keys()]).toEqual([...seeded.keys()]);
  for (const [code, line] of seeded) {
    const other = loaded.get(code);
    expect([code, other?.rankByLoss, other?.rankByScore]).toEqual([code, line.rankByLoss, line.rankByScore]);
    // Money passes through files with rounded cells: a millionth of it may be lost on the way.
    expect(ratio(other?.stopLoss?.mean, line.stopLoss?.mean), code).toBeCloseTo(1, 6);
  }
}, 300_000);

/** One over one where neither is known; never a number where one of them is. */
function ratio(one: number | undefined, other: number | undefined): number {
  return one === undefined && other === undefined ? 1 : (one ?? Number.NaN) / (other ?? Number.NaN);
}

function filesOf(register: RegisterKey): string[] {
  return readdirSync(FOLDER)
    .filter((name) => name.includes(`-${register}.`))
    .sort();
}

async function withDatabase<T>(name: string, run: (url: string) => Promise<T>): Promise<T> {
  const fresh = await freshDatabase(name);
  try {
    return await run(fresh.url);
  } finally {
    await fresh.close();
  }
}

async function loadFile(actor: Actor, register: RegisterKey, fileName: string): Promise<void> {
  const bytes = new Uint8Array(readFileSync(join(FOLDER, fileName)));
  const staged = await stageImport(actor, { register, fileName, bytes });
  if (!staged.ok) throw new Error(staged.error.reason);
  const answer = await commitImport(actor, { batchId: staged.value.batchId, leftOut: [] });
  if (!answer.ok) throw new Error(`${fileName}: ${answer.error.reason}`);
  expect(answer.value, fileName).toMatchObject({ refused: 0 });
}

async function rankingOf(actor: Actor) {
  const { lines } = await readRanking(actor, AS_OF);
  return new Map(lines.map((line) => [line.code, line]));
}
