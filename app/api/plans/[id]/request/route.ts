import { z } from "zod";
import { currentReader } from "@/lib/access/actor";
import { readBoard } from "@/lib/data/planBoard";
import { requestPdf } from "@/lib/reports/pdf/requestPdf";
import { workbookOfSheets } from "@/lib/reports/workbook";
import { requestSheets } from "@/lib/view/planRequest";

export const dynamic = "force-dynamic";

interface Context {
  readonly params: Promise<{ readonly id: string }>;
}

/** The capital request of a plan: a workbook with a sheet for each of its tables, or `?form=pdf` on paper. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const actor = await currentReader();
  if (!actor) return new Response(null, { status: 401 });
  const { id } = await params;
  const page = z.uuid().safeParse(id).success ? await readBoard(actor, { planId: id, whole: true }) : null;
  if (!page) return new Response(null, { status: 404 });
  const onPaper = new URL(request.url).searchParams.get("form") === "pdf";
  const bytes = onPaper ? await requestPdf(page) : await workbookOfSheets(requestSheets(page));
  const type = onPaper
    ? "application/pdf"
    : "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";
  const ending = onPaper ? "pdf" : "xlsx";
  const name = `capital-request-${page.name.replace(/[^\w.-]/g, "_")}-issue-${page.issue}.${ending}`;
  return new Response(bytes, {
    headers: {
      "Content-Type": type,
      "Content-Disposition": `attachment; filename="${name}"`,
      "Cache-Control": "no-store",
    },
  });
}
