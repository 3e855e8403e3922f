import { currentReader } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { search } from "@/lib/data/search";

export const dynamic = "force-dynamic";

/** For the search field: what the signed-in person may see under `q`, as `{ results }`. */
export async function GET(request: Request): Promise<Response> {
  const actor = await currentReader({ amounts: "hidden" });
  if (!actor) return Response.json({ results: [] }, { status: 401 });
  const { searchParams } = new URL(request.url);
  const asOf = await readAsOf(actor, searchParams.get("asOf") ?? undefined);
  const results = await search(actor, { asked: searchParams.get("q") ?? "", asOf });
  return Response.json({ results }, { headers: { "Cache-Control": "no-store" } });
}
