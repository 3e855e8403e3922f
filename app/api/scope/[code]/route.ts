import { currentReader } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { readLineScope } from "@/lib/data/lineScope";
import { readScopeNorms } from "@/lib/data/scopeNorms";
import { csv } from "@/lib/view/csv";
import { datedOrders, orderRows, scopeView } from "@/lib/view/lineScope";

export const dynamic = "force-dynamic";

interface Context {
  readonly params: Promise<{ readonly code: string }>;
}

/** The parts to order for a line's retrofit as a file, for the signed-in person who may see the line. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const actor = await currentReader();
  if (!actor) return new Response(null, { status: 401 });
  const { searchParams } = new URL(request.url);
  const asked = (name: string) => searchParams.get(name) ?? undefined;
  const asOf = await readAsOf(actor, asked("asOf"));
  const [found, { norms }] = await Promise.all([
    readLineScope(actor, { code: (await params).code, asOf }),
    readScopeNorms(actor),
  ]);
  const view = found && scopeView(found, { target: asked("target"), window: asked("window") }, norms);
  if (!view?.scope.ok) return new Response(null, { status: 404 });
  return new Response(csv(orderRows(datedOrders(view.scope.value, view.window, norms))), {
    headers: {
      "Content-Type": "text/csv; charset=utf-8",
      "Content-Disposition": `attachment; filename="parts-${found?.line.code.replace(/[^\w.-]/g, "_")}.csv"`,
      "Cache-Control": "no-store",
    },
  });
}
