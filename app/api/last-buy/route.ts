import type { Actor } from "@/lib/access/actor";
import { currentReader } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { readBuyDecision } from "@/lib/data/buyDecision";
import { readBuySheet } from "@/lib/data/buySheet";
import { writeCsv } from "@/lib/intake/writeCsv";
import { workbook } from "@/lib/reports/workbook";
import { readBuyChoice } from "@/lib/schema/buyDecision";
import { type BuyDocument, buyDocument } from "@/lib/view/buyDocument";
import { BUY_COLUMNS, buyRows } from "@/lib/view/buyTable";

/** Tells a spreadsheet that the text is UTF-8, so that it shows all letters. */
const BYTE_ORDER_MARK = "\uFEFF";
const XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

/** Every step of a sheet as it looks now, or of a decision as it was kept, as XLSX or CSV. */
export async function GET(request: Request): Promise<Response> {
  const actor = await currentReader();
  if (!actor) return new Response("Sign in first.", { status: 401 });
  const asked = new URL(request.url).searchParams;
  const document = await documentOf(actor, asked);
  if (!document) return new Response("There is no such sheet.", { status: 404 });
  const kind = asked.get("format") === "xlsx" ? "xlsx" : "csv";
  const rows = buyRows(document);
  const titles = BUY_COLUMNS.map(({ title }) => title);
  const body =
    kind === "xlsx"
      ? await workbook(BUY_COLUMNS, rows)
      : BYTE_ORDER_MARK + writeCsv([titles, ...rows], { separator: ";" });
  const name = `last-buy-${document.family.name}-${document.asOf}.${kind}`.replace(/\s+/g, "-");
  return new Response(body, {
    headers: {
      "Content-Type": kind === "xlsx" ? XLSX : "text/csv; charset=utf-8",
      "Content-Disposition": `attachment; filename*=UTF-8''${encodeURIComponent(name)}`,
      "Cache-Control": "no-store",
    },
  });
}

async function documentOf(actor: Actor, asked: URLSearchParams): Promise<BuyDocument | null> {
  const decisionId = asked.get("decision");
  if (decisionId !== null) return (await readBuyDecision(actor, decisionId))?.sheet.document ?? null;
  const asOf = await readAsOf(actor, asked.get("asOf") ?? undefined);
  const read = await readBuySheet(actor, { familyId: asked.get("family") ?? "", asOf });
  return read && buyDocument(read.basis, readBuyChoice(asked.get("choice")), read.lastBatch);
}
