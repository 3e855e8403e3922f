import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { readDatesAhead } from "@/lib/data/datesAhead";
import { movedAtSite, type SiteMoved } from "@/lib/data/group/movedAtSite";
import { readMovedNames } from "@/lib/data/movedNames";
import { readReviewShelf } from "@/lib/data/reviewShelf";
import { atOneSite } from "@/lib/data/scope";
import type { SiteName } from "@/lib/data/siteNames";
import { readTransfers } from "@/lib/data/transfers";
import { addDays, type IsoDate } from "@/lib/kernel/isoDate";
import { ENGINE } from "@/lib/risk/evaluate";
import type { ChangedInput } from "@/lib/risk/moved/changedInputs";
import type { MovedPool } from "@/lib/risk/moved/movedPools";
import { type DateAhead, type DateKind, datesAhead } from "@/lib/view/datesAhead";
import { partLabel } from "@/lib/view/linePart";
import { movedWords } from "@/lib/view/movedWords";
import {
  byWorse,
  gotBetter,
  gotWorse,
  mainStep,
  type ProposedTransfer,
  REVIEW_SPANS,
  type ReviewFigures,
  type WorsePart,
} from "@/lib/view/review";
import type { SeenTransfer } from "@/lib/view/transfer";

const KINDS: ReadonlySet<DateKind> = new Set(["order-by", "last-order", "last-ship", "repair-end"]);
const LOOKS_AHEAD = REVIEW_SPANS[2];

/** Figures of a review, and the version of the data they are of. */
export interface FiguresNow {
  readonly figures: ReviewFigures;
  readonly dataVersion: number;
  /** Parts installed at the site, by number. */
  readonly parts: readonly SitePart[];
}

export interface SitePart {
  readonly id: string;
  readonly number: string;
  readonly description: string;
}

/** What a review of a site shows on a day: what got worse and why, dates, repairs, holds, counts. */
export async function readReviewFigures(
  actor: Actor,
  { site, asOf }: { readonly site: SiteName; readonly asOf: IsoDate },
): Promise<FiguresNow> {
  const local = atOneSite(actor, site.id);
  const moved = await movedAtSite(site.id, asOf);
  const parts = await readParts(actor, moved.pools);
  const [worse, dates, shelf, transfers] = await Promise.all([
    tellWorse(local, moved, parts),
    readDatesAhead(local, asOf),
    readReviewShelf(local, asOf),
    readTransfers(local, null),
  ]);
  return {
    parts,
    dataVersion: moved.dataVersion,
    figures: {
      ...{ asOf, siteCode: site.code, siteName: site.name, engine: ENGINE, base: moved.base },
      ...{ parts: moved.pools.length, better: moved.pools.filter(gotBetter).length, worse },
      dates: datesAhead(dates).filter((date) => isTalkedAbout(date, asOf)),
      ...shelf,
      transfers: transfers.filter(({ state }) => state === "proposed").map(proposedAt(site.code)),
    },
  };
}

function proposedAt(siteCode: string) {
  return ({ id, partId, number, pieces, toSite }: SeenTransfer): ProposedTransfer => ({
    ...{ id, partId, number, pieces },
    way: toSite === siteCode ? "in" : "out",
  });
}

function isTalkedAbout({ kind, on, units }: DateAhead, asOf: IsoDate): boolean {
  return KINDS.has(kind) && on <= addDays(asOf, LOOKS_AHEAD) && (units ?? 0) > 0;
}

function readParts(_actor: Actor, pools: readonly MovedPool[]): Promise<SitePart[]> {
  const ids = pools.map(({ poolId }) => poolId).filter((id) => !id.startsWith("unidentified:"));
  return database().part.findMany({
    where: { id: { in: ids } },
    select: { id: true, number: true, description: true },
    orderBy: [{ number: "asc" }, { id: "asc" }],
  });
}

async function tellWorse(
  actor: Actor,
  { pools, inputs, stages }: SiteMoved,
  parts: readonly SitePart[],
): Promise<WorsePart[]> {
  const worse = pools.filter(gotWorse).sort(byWorse);
  const ids = new Set(worse.map(({ poolId }) => poolId));
  const told = inputs.filter(({ poolId }) => poolId !== null && ids.has(poolId));
  const names = await readMovedNames(actor, told);
  const byId = new Map(parts.map((part) => [part.id, part]));
  const byPool = new Map<string | null, ChangedInput[]>(worse.map(({ poolId }) => [poolId, []]));
  for (const input of told) byPool.get(input.poolId)?.push(input);
  return worse.map((pool) => {
    const part = byId.get(pool.poolId);
    return {
      ...pool,
      number: partLabel(pool.poolId, part?.number),
      description: part?.description ?? "",
      stage: stages.get(pool.poolId) ?? "undated",
      main: mainStep(pool),
      inputs: movedWords(byPool.get(pool.poolId) ?? [], names),
      href: part ? `/parts/${part.id}` : null,
    };
  });
}
