import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Transaction } from "@/lib/data/change";
import { type LotPlace, putPieces } from "@/lib/data/stock/moveLots";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { ReleaseResult } from "@/lib/projects/closeOut";
import type { LotStep, ShelfSteps } from "@/lib/schema/lotStep";
import type { StockState } from "@/lib/spares/usableCount";

/** A removed unit with what its test said. */
export interface ReleasedUnit {
  readonly partId: string;
  readonly revision: string;
  readonly bin: string;
  readonly result: ReleaseResult | null;
  readonly testedOn: IsoDate | null;
}

interface Release {
  readonly siteId: string;
  readonly projectCode: string;
  readonly units: readonly ReleasedUnit[];
  /** Who closes, and when. */
  readonly by: string;
  readonly today: IsoDate;
}

/** What a result is booked as; what is scrapped is booked nowhere. */
const BOOKED_AS: Readonly<Record<ReleaseResult, StockState | null>> = {
  usable: "usable",
  unproven: "unproven",
  needs_repair: "on_hold",
  scrapped: null,
};

interface Batch {
  readonly place: LotPlace;
  readonly pieces: number;
  readonly testedOn: IsoDate | null;
}

/** Units that go into one lot, together; their earliest test stands, as it does for pieces in a bin. */
function batchesOf({ siteId, units }: Release): Batch[] {
  const found = new Map<string, Batch>();
  for (const { partId, revision, bin, result, testedOn } of units) {
    const state = result === null ? null : BOOKED_AS[result];
    if (state === null) continue;
    const key = JSON.stringify([partId, bin, revision, state]);
    const before = found.get(key);
    const days = [testedOn, ...(before ? [before.testedOn] : [])];
    found.set(key, {
      place: { siteId, partId, bin, revision, state },
      pieces: (before?.pieces ?? 0) + 1,
      testedOn: days.includes(null) ? null : (days.sort()[0] ?? null),
    });
  }
  // In one order, so that two closings never wait for each other.
  return [...found].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, batch]) => batch);
}

/**
 * Books the removed units of a project onto its site's shelf; those that need repair are put on hold.
 *
 * Refused where a bin was never counted: pieces put there would not show in any number.
 */
export async function bookReleased(tx: Transaction, release: Release): Promise<Result<ShelfSteps, Refusal>> {
  const batches = batchesOf(release);
  const uncounted = await tx.stockLot.findFirst({
    where: { quantity: null, OR: batches.map(({ place }) => place) },
    select: { bin: true, part: { select: { number: true } } },
  });
  if (uncounted) return err(notCounted(uncounted.bin, uncounted.part.number));
  const lots: LotStep[] = [];
  const holds: string[] = [];
  for (const batch of batches) {
    const step = await shelve(tx, batch, release.projectCode);
    lots.push(step);
    if (batch.place.state === "on_hold") holds.push(await holdFor(tx, step.lotId, { batch, release }));
  }
  return ok({ lots, holds });
}

function notCounted(bin: string, number: string): Refusal {
  return {
    code: "impossible",
    reason: `Nobody ever counted ${number} in bin ${bin}, so pieces put there would not show. Count it first, or name another bin.`,
  };
}

/** A unit called usable ran on the bench on the day of its test; of others nobody says so. */
function shelve(tx: Transaction, { place, pieces, testedOn }: Batch, code: string): Promise<LotStep> {
  const ranOn = place.state === "usable" ? testedOn : null;
  const note = `Released by ${code}`;
  return putPieces(tx, place, { quantity: pieces, lastPoweredOn: ranOn, testedOn: ranOn, note });
}

async function holdFor(
  tx: Transaction,
  lotId: string,
  { batch, release }: { readonly batch: Batch; readonly release: Release },
): Promise<string> {
  const { projectCode, by, today } = release;
  const heldOn = new Date(`${today}T00:00:00Z`);
  const reason = `Needs repair, removed by ${projectCode}`;
  const hold = await tx.stockHold.create({
    data: { lotId, pieces: batch.pieces, reason, heldOn, heldBy: by },
  });
  return hold.id;
}
