import type { GroupInput } from "@/lib/risk/evaluation";
import type { SnapshotInput } from "@/lib/risk/moved/snapshotInput";

/** Stands for all sites somebody may not see. */
export const OTHER_SITES = "other-sites";

/**
 * Two snapshots as somebody may see them who reads only some sites, for telling the inputs that changed – not for
 * evaluating.
 *
 * Other sites' lines and installed counts are left out, their stock and events lose the name of the site. Parts that
 * are in neither snapshot on a line or shelf of the readable sites are left out whole.
 */
export function seenFrom(
  sites: ReadonlySet<string>,
  pair: readonly [SnapshotInput, SnapshotInput],
): [SnapshotInput, SnapshotInput] {
  const pools = new Set(pair.flatMap(({ input }) => poolsAt(sites, input)));
  const see = ({ input, assumptions }: SnapshotInput) => ({ assumptions, input: seen(input, sites, pools) });
  return [see(pair[0]), see(pair[1])];
}

function linesAt(sites: ReadonlySet<string>, { lines }: GroupInput): Set<string> {
  return new Set(lines.filter(({ siteId }) => sites.has(siteId)).map(({ id }) => id));
}

function poolsAt(sites: ReadonlySet<string>, input: GroupInput): string[] {
  const lines = linesAt(sites, input);
  return [
    ...input.installed.filter(({ lineId }) => lines.has(lineId)).map(({ poolId }) => poolId),
    ...input.pools.filter(({ stock }) => stock.some((lot) => sites.has(lot.siteId))).map(({ id }) => id),
  ];
}

function seen(input: GroupInput, sites: ReadonlySet<string>, pools: ReadonlySet<string>): GroupInput {
  const lines = linesAt(sites, input);
  const unnamed = <T extends { readonly siteId: string }>(row: T): T =>
    sites.has(row.siteId) ? row : { ...row, siteId: OTHER_SITES };
  return {
    asOf: input.asOf,
    lines: input.lines.filter(({ id }) => lines.has(id)),
    installed: input.installed.filter(({ lineId }) => lines.has(lineId)),
    pools: input.pools
      .filter(({ id }) => pools.has(id))
      .map((pool) => ({ ...pool, stock: pool.stock.map(unnamed) })),
    experience: input.experience.filter(({ poolId }) => pools.has(poolId)).map(unnamed),
    restorations: input.restorations,
  };
}
