import { GAP_KEYS, type GapBearing, type GapKey, type GapKind, type GapSubject } from "@/lib/view/gapKey";
import { GAP_TEXTS } from "@/lib/view/gapTexts";

export type { GapKey, GapKind, GapSubject } from "@/lib/view/gapKey";

/** One way in which records can be poor. Plain data. */
export interface Gap {
  readonly key: GapKey;
  readonly kind: GapKind;
  readonly subject: GapSubject;
  /** As counted: `Cost per hour not on record`. */
  readonly title: string;
  readonly bearing: GapBearing;
  /** Why it matters, or why nothing can be said of the loss. */
  readonly why: string;
  /** Hours one piece of it takes to mend; common practice, no source. */
  readonly usualHours: number;
}

/** Every gap the product looks for, what bears on the loss first. */
export const GAPS: readonly Gap[] = GAP_KEYS.map((key) => {
  const [kind, subject, title, bearing, usualHours, why] = GAP_TEXTS[key];
  return { key, kind, subject, title, bearing, usualHours, why };
});

/** The gap of an address; null when there is none. */
export function findGap(key: string): Gap | null {
  return GAPS.find((gap) => gap.key === key) ?? null;
}

const NOUNS: Readonly<Record<GapSubject, readonly [string, string]>> = {
  line: ["line", "lines"],
  controller: ["controller", "controllers"],
  axis: ["axis", "axes"],
  place: ["place", "places"],
  lot: ["lot", "lots"],
  event: ["event", "events"],
  part: ["part at a site", "parts at sites"],
  name: ["name", "names"],
};

export function gapNoun(subject: GapSubject): readonly [string, string] {
  return NOUNS[subject];
}

export const GAP_KINDS: Readonly<Record<GapKind, string>> = {
  missing: "Missing",
  old: "Old",
  contradictory: "Contradictory",
  guessed: "Guessed",
};
