import "server-only";
import { database } from "@/lib/data/client";
import { countGaps } from "@/lib/data/quality/countGaps";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { SiteGap } from "@/lib/view/footing";
import type { GapSubject } from "@/lib/view/gap";

/** Records every change of which raises the data version, and of which there may be hundreds of thousands. */
const MANY: readonly GapSubject[] = ["axis", "place", "lot", "event", "part"];
/** Few records, or some that raise no data version, such as numbers to call. */
const FEW: readonly GapSubject[] = ["line", "controller", "name"];
const MOST_KEPT = 20;
const LONGEST_MS = 60_000;

/** Counts by sites, day and data version; kept over hot reloads. */
const kept = globalThis as typeof globalThis & { ebblineGaps?: Map<string, Promise<SiteGap[]>> };

interface Asked {
  readonly asOf: IsoDate;
  readonly ids: readonly string[];
  /** Data version that stood before anything is counted. */
  readonly dataVersion: number;
}

/** Every gap at some of the person's sites: what the data version covers is counted once, the rest each time. */
export async function keptGaps(asked: Asked): Promise<SiteGap[]> {
  const [many, few] = await Promise.all([countMany(asked), counted(asked, FEW)]);
  return [...many, ...few];
}

function countMany(asked: Asked): Promise<SiteGap[]> {
  const { asOf, ids, dataVersion } = asked;
  kept.ebblineGaps ??= new Map();
  const found = kept.ebblineGaps;
  const key = [dataVersion, asOf, ...ids].join(" ");
  const known = found.get(key);
  if (known) return known;
  const [oldest] = found.keys();
  if (found.size >= MOST_KEPT && oldest !== undefined) found.delete(oldest);
  const counting = counted(asked, MANY);
  found.set(key, counting);
  counting.catch(() => found.delete(key));
  return counting;
}

function counted({ asOf, ids }: Asked, subjects: readonly GapSubject[]): Promise<SiteGap[]> {
  return database().$transaction((tx) => countGaps(tx, { asOf, ids, subjects }), {
    timeout: LONGEST_MS,
    maxWait: LONGEST_MS,
  });
}
