import { z } from "zod";
import { currentActor } from "@/lib/access/actor";
import { readBoard } from "@/lib/data/planBoard";
import { workbookOfSheets } from "@/lib/reports/workbook";
import { requestSheets } from "@/lib/view/planRequest";

export const dynamic = "force-dynamic";

interface Context {
  readonly params: Promise<{ readonly id: string }>;
}

/** The capital request of a plan as a workbook, a sheet for each of its tables. */
export async function GET(_request: Request, { params }: Context): Promise<Response> {
  const actor = await currentActor();
  if (!actor) return new Response(null, { status: 401 });
  const { id } = await params;
  const page = z.uuid().safeParse(id).success ? await readBoard(actor, { planId: id, whole: true }) : null;
  if (!page) return new Response(null, { status: 404 });
  const name = `capital-request-${page.name.replace(/[^\w.-]/g, "_")}-issue-${page.issue}.xlsx`;
  return new Response(await workbookOfSheets(requestSheets(page)), {
    headers: {
      "Content-Type": "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
      "Content-Disposition": `attachment; filename="${name}"`,
      "Cache-Control": "no-store",
    },
  });
}
