import type { Fix, FixKind, FixLineMove } from "@/lib/risk/mending/nextFixes";
import type { GapKey } from "@/lib/view/gap";
import { unreadClass } from "@/lib/view/linePlace";
import { count, plainNumber } from "@/lib/view/number";

/** The norm a kind of fix takes its hours from. */
export const FIX_NORM: Readonly<Record<FixKind, GapKey>> = {
  cost: "cost-unowned",
  count: "lot-uncounted",
  read: "place-unread",
  date: "supply-undated",
};

/** A fix named for the person who reads it. */
export interface NamedFix extends Fix {
  /** From 1. */
  readonly rank: number;
  readonly what: string;
  /** Where to do it. */
  readonly href: string;
  readonly moves: readonly (FixLineMove & { readonly code: string })[];
}

export interface FixNames {
  readonly lines: ReadonlyMap<string, string>;
  readonly parts: ReadonlyMap<string, string>;
  /** Codes of the sites whose shelves of a part are not known, by part id. */
  readonly shelves: ReadonlyMap<string, readonly string[]>;
}

/** Names the fixes, in their order. */
export function nameFixes(fixes: readonly Fix[], names: FixNames): NamedFix[] {
  return fixes.map((fix, i) => ({
    ...fix,
    ...{ rank: i + 1, what: whatOf(fix, names), href: hrefOf(fix, names) },
    moves: fix.lines.map((move) => ({ ...move, code: names.lines.get(move.lineId) ?? "" })),
  }));
}

function whatOf({ kind, lineId, poolId, pieces }: Fix, { lines, parts, shelves }: FixNames): string {
  const line = lines.get(lineId ?? "") ?? "";
  const part = parts.get(poolId ?? "") ?? "a part";
  if (kind === "cost") return `Have the cost per hour of ${line} confirmed`;
  if (kind === "read") return `Read ${count(pieces, `${unreadClass(poolId ?? "")} plate`)} on ${line}`;
  if (kind === "date") return `Ask the maker for the supply dates of ${part}`;
  const sites = (shelves.get(poolId ?? "") ?? []).join(", ");
  return `Count and power up ${part}: ${count(pieces, "lot")} at ${sites}`;
}

function hrefOf({ kind, lineId, poolId }: Fix, { lines }: FixNames): string {
  if (kind === "cost" || kind === "read")
    return `/lines/${encodeURIComponent(lines.get(lineId ?? "") ?? "")}`;
  return `/parts/${poolId}`;
}

/** How a place may move: `VEL-03: place 4 or 11`. */
export function moveWords({ code, placeAtLow, placeAtHigh }: NamedFix["moves"][number]): string {
  if (placeAtLow === null || placeAtHigh === null) return code;
  const [low, high] = [Math.min(placeAtLow, placeAtHigh), Math.max(placeAtLow, placeAtHigh)];
  return low === high
    ? `${code}: place ${plainNumber(low)} either way`
    : `${code}: place ${plainNumber(low)} or ${plainNumber(high)}`;
}
