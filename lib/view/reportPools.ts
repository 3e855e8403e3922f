import type { PoolFigures } from "@/lib/risk/evaluation";
import { type ReportInput, type ReportPart, unitsByPool } from "@/lib/view/report";

/** Where more of a pool's usable spares lie than its share of the units calls for. */
export interface HeldShare {
  readonly siteCode: string;
  /** Share of the usable spares divided by the share of the units; 1 is even. */
  readonly index: number;
}

export interface WorstPool {
  readonly part: ReportPart;
  /** Units at the report's sites. */
  readonly units: number;
  /** Loss a year at the report's sites because the shelf is empty, EUR; null is not known. */
  readonly shortage: number | null;
  readonly usableHere: number;
  readonly bookHere: number;
  /** Usable at the group's other sites, as one sum. */
  readonly usableElsewhere: number;
  readonly held: HeldShare | null;
}

/** The pools whose empty shelf costs most at the report's sites. */
export function worstPools(input: ReportInput, most: number): WorstPool[] {
  const units = unitsByPool(input.lines);
  const shortage = shortageByPool(input);
  const siteIds = input.sites.map(({ id }) => id);
  return input.parts
    .map((part): WorstPool => {
      const here = siteIds.map((id) => part.pool.usableBySite[id] ?? { book: 0, usable: 0 });
      const usableHere = here.reduce((sum, { usable }) => sum + usable, 0);
      return {
        part,
        units: units.get(part.id) ?? 0,
        shortage: shortage.get(part.id) ?? null,
        usableHere,
        bookHere: here.reduce((sum, { book }) => sum + book, 0),
        usableElsewhere: Math.max(0, part.pool.usable - usableHere),
        held: mostHeld(part.pool, input),
      };
    })
    .filter(({ units: here }) => here > 0)
    .sort(
      (a, b) =>
        (b.shortage ?? 0) - (a.shortage ?? 0) ||
        b.part.pool.noSpare.mean - a.part.pool.noSpare.mean ||
        (a.part.number < b.part.number ? -1 : 1),
    )
    .slice(0, most);
}

function shortageByPool({ lines }: ReportInput): Map<string, number> {
  const sums = new Map<string, number>();
  for (const { result } of lines)
    for (const { poolId, shortageLoss } of result.pools)
      if (shortageLoss !== null) sums.set(poolId, (sums.get(poolId) ?? 0) + shortageLoss);
  return sums;
}

/** The report's site that holds most against its units; null where nothing usable is held. */
function mostHeld(pool: PoolFigures, { sites, lines }: ReportInput): HeldShare | null {
  if (pool.usable <= 0 || pool.installed <= 0) return null;
  const found = sites.flatMap(({ id, code }): HeldShare[] => {
    const held = pool.usableBySite[id]?.usable ?? 0;
    const units = unitsByPool(lines.filter(({ siteId }) => siteId === id)).get(pool.poolId) ?? 0;
    if (held <= 0 || units <= 0) return [];
    return [{ siteCode: code, index: held / pool.usable / (units / pool.installed) }];
  });
  return found.sort((a, b) => b.index - a.index)[0] ?? null;
}
