import type { IsoDate } from "@/lib/kernel/isoDate";
import { type BearsOn, type GapEffect, gapEffect, type WeighedLine } from "@/lib/risk/mending/gapEffect";
import { GAPS, type Gap, type GapKey } from "@/lib/view/gap";
import { count, plainNumber } from "@/lib/view/number";

/** A gap at one site. */
export interface SiteGap {
  readonly siteId: string;
  readonly key: GapKey;
  readonly missing: number;
  readonly of: number;
  /** Earliest day it goes back to; null is no day on record. */
  readonly oldestOn: IsoDate | null;
  /** Lines or parts it bears on. */
  readonly bearsOn: readonly string[];
}

/** What a gap was at a site when a snapshot was taken. */
export interface EarlierGap {
  readonly siteId: string;
  readonly key: string;
  readonly asOf: IsoDate;
  readonly missing: number;
}

/** A norm somebody set. */
export interface StatedNorm {
  readonly gap: string;
  readonly hours: number;
  readonly changedOn: IsoDate;
  readonly changedBy: string;
  readonly version: number;
}

/** One gap over some sites. */
export interface FootingRow extends Gap {
  readonly missing: number;
  readonly of: number;
  readonly oldestOn: IsoDate | null;
  /** Null: nothing can be said of the loss. */
  readonly effect: GapEffect | null;
  /** Missing at the last snapshot before, at the same sites; null where one of them has none. */
  readonly before: { readonly missing: number; readonly asOf: IsoDate } | null;
  /** Hours one piece takes, and who said so; null is common practice. */
  readonly hoursEach: number;
  readonly norm: StatedNorm | null;
  readonly sites: readonly { readonly siteId: string; readonly missing: number; readonly of: number }[];
}

export interface FootingFacts {
  readonly gaps: readonly SiteGap[];
  readonly lines: readonly WeighedLine[];
  readonly earlier: readonly EarlierGap[];
  readonly norms: readonly StatedNorm[];
}

/** Every gap that is looked for, summed over the sites given: what most of the loss rests on first, then the largest share. */
export function footingRows(facts: FootingFacts): FootingRow[] {
  const norms = new Map(facts.norms.map((norm) => [norm.gap, norm]));
  const byKey = byGap(facts.gaps);
  const before = byGap(facts.earlier);
  return GAPS.map((gap): FootingRow => {
    const sites = byKey.get(gap.key) ?? [];
    const norm = norms.get(gap.key) ?? null;
    const days = sites.flatMap(({ oldestOn }) => oldestOn ?? []).sort();
    return {
      ...gap,
      missing: sum(sites.map(({ missing }) => missing)),
      of: sum(sites.map(({ of }) => of)),
      oldestOn: days[0] ?? null,
      effect: effectOf(gap, sites, facts.lines),
      before: earlierOf(sites, before.get(gap.key) ?? []),
      ...{ norm, hoursEach: norm?.hours ?? gap.usualHours },
      sites: sites.map(({ siteId, missing, of }) => ({ siteId, missing, of })),
    };
  }).sort(byWeight);
}

function byGap<Row extends { readonly key: string }>(rows: readonly Row[]): ReadonlyMap<string, Row[]> {
  const found = new Map<string, Row[]>();
  for (const row of rows) {
    const list = found.get(row.key);
    if (list) list.push(row);
    else found.set(row.key, [row]);
  }
  return found;
}

function byWeight(a: FootingRow, b: FootingRow): number {
  const weight = ({ effect, missing }: FootingRow) => (missing === 0 ? -1 : (effect?.rests ?? 0));
  return weight(b) - weight(a) || shareOf(b) - shareOf(a);
}

/** Share of the records that have the gap, 0 to 1. */
export function shareOf({ missing, of }: Pick<FootingRow, "missing" | "of">): number {
  return of === 0 ? 0 : missing / of;
}

function effectOf(gap: Gap, sites: readonly SiteGap[], lines: readonly WeighedLine[]): GapEffect | null {
  if (gap.bearing === "none") return null;
  const of = gap.bearing === "line" ? "line" : "part";
  const bears = sites.map(({ siteId, bearsOn }): BearsOn => ({ siteId, of, ids: new Set(bearsOn) }));
  return gapEffect(lines, bears, gap.bearing === "unknown");
}

/** The sum at the last snapshots, where every site with records has one; of different days, the earliest is named. */
function earlierOf(sites: readonly SiteGap[], earlier: readonly EarlierGap[]): FootingRow["before"] {
  const found = sites.map(({ siteId }) => earlier.find((one) => one.siteId === siteId));
  if (found.length === 0 || found.some((one) => one === undefined)) return null;
  const known = found.filter((one) => one !== undefined);
  const [asOf = ""] = known.map((one) => one.asOf).sort();
  return { asOf, missing: sum(known.map(({ missing }) => missing)) };
}

const sum = (values: readonly number[]) => values.reduce((total, one) => total + one, 0);

/** `3 fewer since 23 Nov`, with the day said apart. */
export function trendWords({ missing, before }: FootingRow): {
  readonly kind: "better" | "worse" | "same";
  readonly text: string;
} | null {
  if (before === null) return null;
  const moved = missing - before.missing;
  if (moved === 0) return { kind: "same", text: "as before" };
  return moved < 0
    ? { kind: "better", text: `${plainNumber(-moved)} fewer` }
    : { kind: "worse", text: `${plainNumber(moved)} more` };
}

/** What stands over the board. */
export function footingLead(rows: readonly FootingRow[], showsAmounts = true): string {
  const open = rows.filter(({ missing }) => missing > 0);
  if (open.length === 0) return "Nothing is missing, old, contradictory or guessed among what is looked for.";
  const pieces = sum(open.map(({ missing }) => missing));
  return `${count(open.length, "kind")} of gap, ${count(pieces, "record")} to mend. ${showsAmounts ? "What most of the loss rests on" : "What is missing most often"} stands first.`;
}
