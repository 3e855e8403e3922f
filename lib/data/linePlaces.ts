import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { atSites, sites } from "@/lib/data/scope";
import type { LinePlace, Unknown } from "@/lib/risk/draws/linePlace";
import { type PlaceCheck, type PlaceDossier, type RankedPlace, unreadClass } from "@/lib/view/linePlace";

/** Names an actor may read; what is not in it is of another site. */
interface Names {
  readonly parts: ReadonlyMap<string, string>;
  readonly sites: ReadonlyMap<string, string>;
}

async function readNames(actor: Actor, places: readonly LinePlace[]): Promise<Names> {
  const lots = places.flatMap(({ unknowns }) => unknowns).filter(({ kind }) => kind === "stock");
  if (lots.length === 0) return { parts: new Map(), sites: new Map() };
  const partIds = lots.flatMap(({ poolId }) => (poolId === null ? [] : [poolId]));
  const [parts, seen] = await Promise.all([
    database().part.findMany({ where: { id: { in: partIds } }, select: { id: true, number: true } }),
    database().site.findMany({ where: sites(actor, "read"), select: { id: true, code: true } }),
  ]);
  return {
    parts: new Map(parts.map(({ id, number }) => [id, number])),
    sites: new Map(seen.map(({ id, code }) => [id, code])),
  };
}

function checkOf({ kind, poolId, siteIds, ...moves }: Unknown, names: Names): PlaceCheck {
  const { placeAtLow, placeAtHigh, places } = moves;
  const siteCodes = siteIds.flatMap((id) => names.sites.get(id) ?? []);
  const label =
    poolId === null ? null : kind === "part" ? unreadClass(poolId) : (names.parts.get(poolId) ?? "a part");
  const elsewhere = siteCodes.length < siteIds.length;
  return { kind, placeAtLow, placeAtHigh, places, label, siteCodes, elsewhere };
}

function rankedPlace(place: LinePlace, names: Names): RankedPlace {
  return {
    ...{ draws: place.draws, seed: place.seed, span: place.place, firstFive: place.firstFive },
    ...{ beforeNext: place.neighbours.find(({ side }) => side === "below")?.before ?? null },
    fragile: place.fragile,
    checks: place.unknowns.map((unknown) => checkOf(unknown, names)),
  };
}

/** The places of lines as an actor may read them, by line id. */
export async function readRankedPlaces(
  actor: Actor,
  places: readonly LinePlace[],
): Promise<ReadonlyMap<string, RankedPlace>> {
  const names = await readNames(actor, places);
  return new Map(places.map((place) => [place.lineId, rankedPlace(place, names)]));
}

/** The place of one line with its neighbours, of which only those at the actor's sites are named. */
export async function readPlaceDossier(
  actor: Actor,
  { evaluationId, place }: { readonly evaluationId: string; readonly place: LinePlace },
): Promise<PlaceDossier> {
  const rows = await database().evaluatedLine.findMany({
    where: {
      evaluationId,
      lineId: { in: place.neighbours.map(({ lineId }) => lineId) },
      line: atSites(actor, "read"),
    },
    select: { lineId: true, rankByLoss: true, line: { select: { code: true } } },
  });
  const seen = new Map(rows.map((row) => [row.lineId, row]));
  return {
    ...rankedPlace(place, await readNames(actor, [place])),
    neighbours: place.neighbours.map(({ lineId, side, before }) => {
      const row = seen.get(lineId);
      return { side, before, code: row?.line.code ?? null, place: row?.rankByLoss ?? null };
    }),
  };
}
