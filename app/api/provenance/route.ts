import { currentReader } from "@/lib/access/actor";
import { maySomewhere } from "@/lib/access/policy";
import { provenanceOf } from "@/lib/data/provenance";
import { NO_ORIGIN, originInWords } from "@/lib/view/provenance";

/** Where a stored thing comes from, `?entity=StockLot&id=…`, as `{ lines: [{ text, href }] }`. */
export async function GET(request: Request): Promise<Response> {
  const actor = await currentReader();
  if (!actor) return Response.json({ lines: [] }, { status: 401 });
  const asked = new URL(request.url).searchParams;
  const wanted = { entity: asked.get("entity") ?? "", id: asked.get("id") ?? "" };
  const origins = await provenanceOf(actor, wanted);
  if (!origins) return Response.json({ lines: [] }, { status: 404 });
  const mayOpen = maySomewhere(actor.grants, "register:import");
  const lines = origins.map((origin) => ({
    text: originInWords(origin),
    href: origin.kind === "file" && mayOpen ? `/import/${origin.batchId}` : null,
  }));
  const told = lines.length > 0 ? lines : [{ text: NO_ORIGIN, href: null }];
  return Response.json({ lines: told }, { headers: { "Cache-Control": "no-store" } });
}
