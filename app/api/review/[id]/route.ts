import { currentReader } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { readPurchaseList } from "@/lib/data/review";
import { workbook } from "@/lib/reports/workbook";
import { csv } from "@/lib/view/csv";
import { buyColumns, buyRows } from "@/lib/view/reviewBuys";

export const dynamic = "force-dynamic";

interface Context {
  readonly params: Promise<{ readonly id: string }>;
}

const TYPES = {
  csv: "text/csv; charset=utf-8",
  xlsx: "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
} as const;

/** The purchase list of a review as a file, or the rows of it named in the address. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const actor = await currentReader({ amounts: "hidden" });
  if (!actor) return new Response(null, { status: 401 });
  const { searchParams } = new URL(request.url);
  const form = searchParams.get("as") === "xlsx" ? "xlsx" : "csv";
  const chosen = searchParams.get("rows")?.split(",");
  const list = await readPurchaseList(actor, {
    reviewId: (await params).id,
    asOf: await readAsOf(actor, undefined),
  });
  if (!list) return new Response(null, { status: 404 });
  const buys = chosen ? list.buys.filter(({ id }) => chosen.includes(id)) : list.buys;
  const columns = buyColumns(list.showsAmounts);
  const rows = buyRows(columns, buys, list.siteCode);
  const body =
    form === "xlsx" ? await workbook(columns, rows) : csv([columns.map(({ title }) => title), ...rows]);
  const name = `purchases-${list.siteCode.replace(/[^\w.-]/g, "_")}-${list.heldOn}.${form}`;
  return new Response(body, {
    headers: {
      "Content-Type": TYPES[form],
      "Content-Disposition": `attachment; filename="${name}"`,
      "Cache-Control": "no-store",
    },
  });
}
