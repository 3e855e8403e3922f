import { currentActor } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { readStockLevels } from "@/lib/data/stockLevels";
import { workbook } from "@/lib/reports/workbook";
import { csv } from "@/lib/view/csv";
import { readTarget, surplusColumns, surplusRows } from "@/lib/view/stockLevels";

export const dynamic = "force-dynamic";

const XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

/** The surplus of the signed-in person's sites as a file. */
export async function GET(request: Request): Promise<Response> {
  const actor = await currentActor();
  if (!actor) return new Response(null, { status: 401 });
  const { searchParams } = new URL(request.url);
  const asOf = await readAsOf(actor, searchParams.get("asOf") ?? undefined);
  const target = readTarget(searchParams.get("target") ?? undefined);
  const rows = surplusRows(await readStockLevels(actor, { asOf, target }), asOf);
  const isXlsx = searchParams.get("format") === "xlsx";
  const body = isXlsx
    ? await workbook(surplusColumns, rows)
    : csv([surplusColumns.map(({ title }) => title), ...rows]);
  return new Response(body, {
    headers: {
      "Content-Type": isXlsx ? XLSX : "text/csv; charset=utf-8",
      "Content-Disposition": `attachment; filename="surplus-${asOf}.${isXlsx ? "xlsx" : "csv"}"`,
      "Cache-Control": "no-store",
    },
  });
}
