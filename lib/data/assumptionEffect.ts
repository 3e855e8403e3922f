import "server-only";
import type { Actor } from "@/lib/access/actor";
import { readKeptVersions } from "@/lib/data/assumptions";
import { database } from "@/lib/data/client";
import { assumptionsInUse } from "@/lib/data/group/assumptionsInUse";
import { loadGroupInput } from "@/lib/data/group/loadGroupInput";
import { siteIds } from "@/lib/data/scope";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { productSets } from "@/lib/risk/assumptionSets";
import type { Assumptions } from "@/lib/risk/assumptions";
import { evaluate } from "@/lib/risk/evaluate";
import type { GroupInput, Span } from "@/lib/risk/evaluation";
import type { AssumptionChoice } from "@/lib/schema/assumptions";
import { latestOwn } from "@/lib/view/assumptionTable";

/** What the figures would be under a set. */
export interface AssumptionEffect extends AssumptionChoice {
  readonly inUse: boolean;
  /** Stop loss of the lines the person may read, EUR a year, as far as it is known. */
  readonly stopLoss: Span;
  /** The lines that lose most, the first five. */
  readonly lines: readonly { readonly code: string; readonly stopLoss: Span }[];
}

export interface AssumptionEffects {
  readonly sets: readonly AssumptionEffect[];
  /** Lines the figures cover, and those without a cost per hour, which have no money. */
  readonly lines: number;
  readonly linesWithoutMoney: number;
}

const LINES_SHOWN = 5;

/** The stop loss under each set at hand, computed anew and stored nowhere. */
export async function readAssumptionEffects(actor: Actor, asOf: IsoDate): Promise<AssumptionEffects> {
  const [input, inUse, kept] = await Promise.all([
    loadGroupInput(database(), asOf),
    assumptionsInUse(database()),
    readKeptVersions(actor),
  ]);
  const own = latestOwn(kept);
  const { careful, likely, bold } = productSets;
  const atHand = [careful, likely, bold, ...(own ? [own] : [])];
  const isInUse = ({ kind, version }: AssumptionChoice) => kind === inUse.kind && version === inUse.version;
  const sets = atHand.some(isInUse) ? atHand : [...atHand, inUse];
  const seen = siteIds(actor, "read")?.in ?? null;
  const lines = input.lines.filter(({ siteId }) => seen === null || seen.includes(siteId));
  return {
    sets: sets.map((set) => ({
      ...{ kind: set.kind, version: set.version, inUse: isInUse(set) },
      ...effectOf(input, set.values, lines),
    })),
    lines: lines.length,
    linesWithoutMoney: lines.filter(({ costPerHour }) => costPerHour === null).length,
  };
}

function effectOf(
  input: GroupInput,
  values: Assumptions,
  seen: GroupInput["lines"],
): Pick<AssumptionEffect, "stopLoss" | "lines"> {
  const codes = new Map(seen.map(({ id, code }) => [id, code]));
  const lines = evaluate(input, values).lines.flatMap(({ lineId, stopLoss }) => {
    const code = codes.get(lineId);
    return code === undefined || stopLoss === null ? [] : [{ code, stopLoss }];
  });
  const sum = (end: keyof Span) => lines.reduce((total, { stopLoss }) => total + stopLoss[end], 0);
  return {
    stopLoss: { mean: sum("mean"), low: sum("low"), high: sum("high") },
    lines: [...lines].sort((a, b) => b.stopLoss.mean - a.stopLoss.mean).slice(0, LINES_SHOWN),
  };
}
