import type { IsoDate } from "@/lib/kernel/isoDate";
import type { GapKey, GapSubject } from "@/lib/view/gap";

/** One record that has a gap. */
export interface GapRow {
  readonly id: string;
  readonly siteCode: string;
  readonly label: string;
  readonly detail: string;
  /** What its page is found by; null has none. */
  readonly target: string | null;
  /** Day it goes back to; null is none on record. */
  readonly sinceOn: IsoDate | null;
}

const PAGES: Readonly<Record<GapSubject, (target: string) => string>> = {
  line: (target) => `/lines/${encodeURIComponent(target)}`,
  controller: (target) => `/machines/${target}`,
  axis: (target) => `/machines/${target}`,
  place: (target) => `/machines/${target}`,
  lot: (target) => `/parts/${target}`,
  event: (target) => `/events?events.q=${encodeURIComponent(target)}`,
  part: (target) => `/parts/${target}`,
  name: (target) => `/import/${target}`,
};

/** Where a gap stands on its page, as far as it stands anywhere. */
const ANCHORS: Partial<Record<GapKey, string>> = {
  "cost-missing": "#stop-cost",
  "cost-unowned": "#stop-cost",
  "cost-expired": "#stop-cost",
  "buffer-missing": "#stop-cost",
  "backup-missing": "#card",
  "backup-untried": "#card",
  "lot-uncounted": "#stock",
  "count-old": "#stock",
  "power-unknown": "#stock",
  "lot-unproven": "#stock",
  "origin-unknown": "#stock",
  "supply-undated": "#supply",
};

/** The page a record is mended on; null when it has none yet. */
export function mendHref(subject: GapSubject, key: GapKey, { target }: GapRow): string | null {
  return target === null ? null : `${PAGES[subject](target)}${ANCHORS[key] ?? ""}`;
}
