import { currentActor } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { readSpend } from "@/lib/data/spend";
import { workbook } from "@/lib/reports/workbook";
import { csv } from "@/lib/view/csv";
import { readBudget, spendColumns, spendRows } from "@/lib/view/spend";

export const dynamic = "force-dynamic";

const XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

function file(body: BodyInit, type: string, name: string): Response {
  return new Response(body, {
    headers: {
      "Content-Type": type,
      "Content-Disposition": `attachment; filename="${name}"`,
      "Cache-Control": "no-store",
    },
  });
}

/** The pieces a budget buys as a file, for the signed-in person's sites. */
export async function GET(request: Request): Promise<Response> {
  const actor = await currentActor();
  if (!actor) return new Response(null, { status: 401 });
  const { searchParams } = new URL(request.url);
  const budget = readBudget(searchParams.get("budget") ?? "");
  if (budget === null) return new Response("Write a budget such as 200000.", { status: 400 });
  const asOf = await readAsOf(actor, searchParams.get("asOf") ?? undefined);
  const list = await readSpend(actor, { asOf, budget });
  const [columns, rows] = [spendColumns(list), spendRows(list)];
  const name = `spend-${asOf}`;
  if (searchParams.get("format") === "xlsx") return file(await workbook(columns, rows), XLSX, `${name}.xlsx`);
  return file(csv([columns.map(({ title }) => title), ...rows]), "text/csv; charset=utf-8", `${name}.csv`);
}
