import "server-only";
import type { Transaction } from "@/lib/data/change";
import { database } from "@/lib/data/client";
import { assumptionsInUse } from "@/lib/data/group/assumptionsInUse";
import { loadGroupInput } from "@/lib/data/group/loadGroupInput";
import { reviewBase } from "@/lib/data/group/reviewBase";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { SupplyStage } from "@/lib/lifecycle/supplyStage";
import { type ChangedInput, changedInputs } from "@/lib/risk/moved/changedInputs";
import { evaluateWay } from "@/lib/risk/moved/evaluateWay";
import { type MovedPool, movedPools } from "@/lib/risk/moved/movedPools";
import { seenFrom } from "@/lib/risk/moved/seenFrom";
import type { SnapshotInput } from "@/lib/risk/moved/snapshotInput";
import type { ReviewBase } from "@/lib/view/review";

export interface SiteMoved {
  readonly base: ReviewBase;
  /** Version of the data the later end is of. */
  readonly dataVersion: number;
  readonly pools: readonly MovedPool[];
  /** Supply stage of each pool at the later end. */
  readonly stages: ReadonlyMap<string, SupplyStage>;
  /** Changed inputs as a reader of this site alone may see them. */
  readonly inputs: readonly ChangedInput[];
}

const MOST_KEPT = 8;
const LONGEST_MS = 60_000;
const kept = new Map<string, SiteMoved>();

/**
 * What moved the pools of a site since it was last looked at, up to a day on the data of now.
 *
 * Kept in the process for the last few questions: the same base, data version, day and assumptions give the same answer.
 */
export async function movedAtSite(siteId: string, asOf: IsoDate): Promise<SiteMoved> {
  return database().$transaction(
    async (tx) => {
      const found = await reviewBase(tx, { siteId, asOf });
      const set = await assumptionsInUse(tx);
      const { version } = await tx.dataVersion.findUniqueOrThrow({ where: { id: 1 } });
      const key = [siteId, asOf, found.key, version, set.kind, set.version].join(" ");
      const known = kept.get(key);
      if (known) return known;
      const before = await found.open(tx, set.values);
      const after = { input: await loadGroupInput(tx, asOf), assumptions: set.values };
      const dataVersion = Number(version);
      return keep(key, { base: found.base, dataVersion, ...compare(siteId, before, after) });
    },
    { isolationLevel: "RepeatableRead", timeout: LONGEST_MS, maxWait: LONGEST_MS },
  );
}

/** What the evaluation reads on a day, to be frozen with a review. */
export async function readingOf(tx: Transaction, asOf: IsoDate): Promise<SnapshotInput> {
  return { input: await loadGroupInput(tx, asOf), assumptions: (await assumptionsInUse(tx)).values };
}

function compare(siteId: string, before: SnapshotInput, after: SnapshotInput) {
  const way = evaluateWay(before, after);
  const lineIds = new Set(
    [before, after].flatMap(({ input }) =>
      input.lines.filter((line) => line.siteId === siteId).map(({ id }) => id),
    ),
  );
  return {
    pools: movedPools(way, { id: siteId, lineIds }),
    stages: new Map(way.at(-1)?.pools.map(({ poolId, stage }) => [poolId, stage])),
    inputs: changedInputs(...seenFrom(new Set([siteId]), [before, after])),
  };
}

function keep(key: string, moved: SiteMoved): SiteMoved {
  kept.set(key, moved);
  const [oldest] = kept.keys();
  if (kept.size > MOST_KEPT && oldest !== undefined) kept.delete(oldest);
  return moved;
}
