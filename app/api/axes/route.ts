import { currentReader } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { readAxes } from "@/lib/data/axes";
import { readAxisFilter } from "@/lib/view/axisList";

export const dynamic = "force-dynamic";

/** For the list of axes: the page after an axis, as `{ axes, next }`. */
export async function GET(request: Request): Promise<Response> {
  const actor = await currentReader({ amounts: "hidden" });
  if (!actor) return Response.json({ axes: [], next: null }, { status: 401 });
  const { searchParams } = new URL(request.url);
  const asOf = await readAsOf(actor, searchParams.get("asOf") ?? undefined);
  const question = { asOf, filter: readAxisFilter(searchParams), after: searchParams.get("after") };
  return Response.json(await readAxes(actor, question), { headers: { "Cache-Control": "no-store" } });
}
