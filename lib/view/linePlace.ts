import type { DrawnSpan, LinePlace, Unknown } from "@/lib/risk/draws/linePlace";
import type { ItemClass, Span } from "@/lib/risk/evaluation";
import { chanceWords } from "@/lib/view/chance";
import { itemClassName } from "@/lib/view/linePart";

/** Something to find out that would settle a line's place better, named for the person who reads it. */
export interface PlaceCheck extends Pick<Unknown, "kind" | "placeAtLow" | "placeAtHigh" | "places"> {
  /** The part whose spares are not counted, or the class nobody has read; null for the cost per hour. */
  readonly label: string | null;
  /** Codes of the reader's sites with lots nobody counted. */
  readonly siteCodes: readonly string[];
  /** Such lots lie at sites the reader may not see. */
  readonly elsewhere: boolean;
}

/** How sure a line's place by loss is. */
export interface RankedPlace {
  readonly draws: number;
  readonly seed: number;
  /** 5 %, 50 % and 95 % points of its place. */
  readonly span: DrawnSpan;
  readonly firstFive: number;
  /** Share of the draws that put it before the next line of the group's ranking; null for the last. */
  readonly beforeNext: number | null;
  readonly fragile: boolean;
  /** What to find out, what moves the line farthest first. */
  readonly checks: readonly PlaceCheck[];
}

/** A neighbour in the ranking; code and place are null when the reader may not see it. */
export interface PlaceNeighbour {
  readonly side: "above" | "below";
  readonly code: string | null;
  readonly place: number | null;
  readonly before: number;
}

export interface PlaceDossier extends RankedPlace {
  readonly neighbours: readonly PlaceNeighbour[];
}

/** From this share of the draws on, the order of two neighbours is called firm; the product's own choice. */
export const FIRM_SHARE = 0.8;

/** Places as a range: `1–4`, or `3` when both ends are the same. */
export function placeRange({ low, high }: Pick<DrawnSpan, "low" | "high">): string {
  return low === high ? String(low) : `${low}–${high}`;
}

/** What somebody should do next to settle the place. */
export function checkWords(code: string, { kind, label, siteCodes, elsewhere }: PlaceCheck): string {
  if (kind === "cost") return `Finance confirms the cost per hour of ${code}`;
  if (kind === "part") return `Identify the unread items on ${code} (class ${label})`;
  const sites = [...siteCodes, ...(elsewhere ? ["another site"] : [])];
  return `Count ${label} at ${sites.join(", ")}`;
}

/** Places the line may come to stand at by what is found. */
export function checkRange({ placeAtLow, placeAtHigh }: PlaceCheck): string {
  return placeRange({ low: Math.min(placeAtLow, placeAtHigh), high: Math.max(placeAtLow, placeAtHigh) });
}

/** What is not known, and where the line would stand at both ends of what it may be. */
export function checkReason({ kind, placeAtLow, placeAtHigh }: PlaceCheck): string {
  const places = `place ${placeAtLow} at one end of what it may be, place ${placeAtHigh} at the other`;
  if (kind === "cost") return `The cost per hour is not confirmed: ${places}.`;
  return kind === "part"
    ? `The chance of having no spare is not known: ${places}.`
    : `What lies on the shelf is not counted: ${places}.`;
}

/** Class named in the id of a pool nobody has read. */
export function unreadClass(poolId: string): string {
  return itemClassName(poolId.slice(poolId.indexOf(":") + 1) as ItemClass);
}

/** `In 20 such groups about 13 put A before B.` */
export function oddsSentence(code: string, other: string, before: number): string {
  if (before === 0) return `No draw puts ${code} before ${other}.`;
  if (before === 1) return `Every draw puts ${code} before ${other}.`;
  const words = chanceWords(before, "groups");
  const verb = /about \d+$/.test(words) ? `put ${code} before ${other}` : `${code} comes before ${other}`;
  return `${words.charAt(0).toUpperCase()}${words.slice(1)} ${verb}.`;
}

/** The mean as evaluated with the 5 % and 95 % points of the draws: a span of everything uncertain, not of rates alone. */
export function drawnLoss(stopLoss: Span | null, place: LinePlace | null): Span | null {
  if (stopLoss === null || place === null) return stopLoss;
  return { mean: stopLoss.mean, low: place.stopLoss.low, high: place.stopLoss.high };
}
