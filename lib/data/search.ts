import "server-only";
import type { Actor } from "@/lib/access/actor";
import { MOST_HITS, readSearchKey } from "@/lib/data/search/matching";
import { searchBins } from "@/lib/data/search/searchBins";
import { searchControllers } from "@/lib/data/search/searchControllers";
import { searchParts, searchSerials } from "@/lib/data/search/searchParts";
import { searchAxes, searchLines, searchMachines, searchPositions } from "@/lib/data/search/searchPlaces";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { orderHits, type SearchHit } from "@/lib/view/searchHit";

/** One sign finds nearly everything and says nothing. */
const SHORTEST = 2;
const LONGEST = 100;

/**
 * What the actor may see under a text: parts, serial numbers, bins, lines, machines, axes, places and controllers.
 *
 * Case, accents, dashes and spaces do not count. At most 20 hits, the whole text first, then beginnings.
 */
export async function search(
  actor: Actor,
  { asked, asOf }: { readonly asked: string; readonly asOf: IsoDate },
): Promise<SearchHit[]> {
  const key = await readSearchKey(actor, asked.slice(0, LONGEST));
  if (key.length < SHORTEST) return [];
  const wanted = { key, asOf };
  const found = await Promise.all([
    searchLines(actor, wanted),
    searchParts(actor, wanted),
    searchSerials(actor, wanted),
    searchBins(actor, wanted),
    searchMachines(actor, wanted),
    searchAxes(actor, wanted),
    searchPositions(actor, wanted),
    searchControllers(actor, wanted),
  ]);
  return orderHits(found.flat(), MOST_HITS);
}
