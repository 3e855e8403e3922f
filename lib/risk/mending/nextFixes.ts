import type { Unknown } from "@/lib/risk/draws/linePlace";
import type { LineResult } from "@/lib/risk/evaluation";
import { isUnidentified } from "@/lib/risk/poolOutlook";

/** What somebody could go and find out: one cost, the shelf of one part, the unread places of a line, one maker's dates. */
export type FixKind = "cost" | "count" | "read" | "date";

export interface FixLine {
  readonly id: string;
  readonly result: Pick<LineResult, "pools" | "stopLoss">;
  /** What the draws say settling would move; empty for a line without money. */
  readonly unknowns: readonly Omit<Unknown, "siteIds">[];
}

/** How many pieces of work a fix is made of. */
export interface FixWork {
  /** Lots nobody counted, or usable of unknown last power-up, by part id. */
  readonly lots: ReadonlyMap<string, number>;
  /** Places nobody read, by line id and class, `line unidentified:class`. */
  readonly unread: ReadonlyMap<string, number>;
  /** Parts without a fresh supply date. */
  readonly undated: ReadonlySet<string>;
}

/** Hours one piece takes. */
export type FixHours = Readonly<Record<FixKind, number>>;

/** What settling moves on one line. */
export interface FixLineMove {
  readonly lineId: string;
  /** Median place at both ends of what the unknown may be; null where the draws do not ask for it. */
  readonly placeAtLow: number | null;
  readonly placeAtHigh: number | null;
  readonly places: number;
  /** One end is within the cut and the other is not. */
  readonly crosses: boolean;
  /** EUR a year that comes from not knowing; null where the evaluation gives none. */
  readonly unknownLoss: number | null;
}

export interface Fix {
  readonly kind: FixKind;
  /** Line of a cost or of unread places; null otherwise. */
  readonly lineId: string | null;
  /** Part or class; null for a cost. */
  readonly poolId: string | null;
  readonly pieces: number;
  readonly hours: number;
  readonly lines: readonly FixLineMove[];
  /** Lines it can carry over the cut. */
  readonly crossings: number;
  /** Sum of the places moved on its lines. */
  readonly places: number;
  /** Sum of what comes from not knowing; null where the evaluation gives none. */
  readonly unknownLoss: number | null;
}

interface Draft {
  readonly kind: FixKind;
  readonly lineId: string | null;
  readonly poolId: string | null;
  readonly pieces: number;
  readonly lines: FixLineMove[];
}

const NO_MOVE = { placeAtLow: null, placeAtHigh: null, places: 0, crosses: false } as const;

/**
 * What to find out next, most per hour of work first: lines carried over the cut, then places moved, then EUR a year that
 * comes from not knowing. What changes nothing and brings nothing is left out.
 *
 * Places are those of the draws with one unknown at its 5 % and 95 % point. The money of a part is shared between counting
 * it and dating it where both are open, so each is a ceiling.
 *
 * @param cut How many lines are within: those funded, or those somebody looks at first.
 */
export function nextFixes(
  lines: readonly FixLine[],
  work: FixWork,
  { hours, cut }: { readonly hours: FixHours; readonly cut: number },
): Fix[] {
  const drafts = new Map<string, Draft>();
  for (const line of lines) for (const found of draftsOf(line, work, cut)) gather(drafts, found);
  return [...drafts.values()]
    .map((draft) => fixOf(draft, hours[draft.kind]))
    .filter(({ places, unknownLoss }) => places > 0 || (unknownLoss ?? 0) > 0)
    .sort(byWorth);
}

function byWorth(a: Fix, b: Fix): number {
  return (
    b.crossings / b.hours - a.crossings / a.hours ||
    b.places / b.hours - a.places / a.hours ||
    (b.unknownLoss ?? 0) / b.hours - (a.unknownLoss ?? 0) / a.hours ||
    a.hours - b.hours ||
    (keyOf(a) < keyOf(b) ? -1 : 1)
  );
}

const keyOf = ({ kind, lineId, poolId }: Pick<Fix, "kind" | "lineId" | "poolId">) =>
  [kind, lineId ?? "", poolId ?? ""].join(" ");

function gather(drafts: Map<string, Draft>, found: Draft): void {
  const known = drafts.get(keyOf(found));
  if (known) known.lines.push(...found.lines);
  else drafts.set(keyOf(found), found);
}

type Mover = (kind: Unknown["kind"], poolId: string | null) => Omit<FixLineMove, "lineId" | "unknownLoss">;

function draftsOf(line: FixLine, work: FixWork, cut: number): Draft[] {
  const moveOf: Mover = (kind, poolId) => {
    const unknown = line.unknowns.find((one) => one.kind === kind && one.poolId === poolId);
    if (!unknown) return NO_MOVE;
    const { placeAtLow, placeAtHigh, places } = unknown;
    return { placeAtLow, placeAtHigh, places, crosses: placeAtLow <= cut !== placeAtHigh <= cut };
  };
  const cost: Draft = {
    ...{ kind: "cost", lineId: line.id, poolId: null, pieces: 1 },
    lines: [{ lineId: line.id, ...moveOf("cost", null), unknownLoss: null }],
  };
  return [cost, ...line.result.pools.flatMap((pool) => draftsOfPool(line.id, pool, { work, moveOf }))];
}

function draftsOfPool(
  lineId: string,
  { poolId, unknownLoss }: FixLine["result"]["pools"][number],
  { work, moveOf }: { readonly work: FixWork; readonly moveOf: Mover },
): Draft[] {
  const at = (kind: Unknown["kind"]) => [{ lineId, ...moveOf(kind, poolId), unknownLoss }];
  if (isUnidentified(poolId)) {
    const pieces = work.unread.get(`${lineId} ${poolId}`) ?? 0;
    return pieces === 0 ? [] : [{ kind: "read", lineId, poolId, pieces, lines: at("part") }];
  }
  const drafts: Draft[] = [];
  const lots = work.lots.get(poolId) ?? 0;
  if (lots > 0) drafts.push({ kind: "count", lineId: null, poolId, pieces: lots, lines: at("stock") });
  const undated = { lineId, ...NO_MOVE, unknownLoss };
  if (work.undated.has(poolId))
    drafts.push({ kind: "date", lineId: null, poolId, pieces: 1, lines: [undated] });
  return drafts;
}

function fixOf({ kind, lineId, poolId, pieces, lines }: Draft, each: number): Fix {
  const known = lines.flatMap(({ unknownLoss }) => (unknownLoss === null ? [] : [unknownLoss]));
  return {
    ...{ kind, lineId, poolId, pieces, hours: pieces * each },
    lines: lines.filter(({ places, unknownLoss }) => places > 0 || (unknownLoss ?? 0) > 0),
    crossings: lines.filter(({ crosses }) => crosses).length,
    places: lines.reduce((sum, { places }) => sum + places, 0),
    unknownLoss: kind === "cost" || known.length === 0 ? null : known.reduce((sum, one) => sum + one, 0),
  };
}
