import { z } from "zod";
import { currentActor } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { openSavedList } from "@/lib/data/savedList";
import { streamOf } from "@/lib/reports/streamOf";
import { FILE_FORMS } from "@/lib/reports/table/savedFile";
import { EXPORT_FORMATS } from "@/lib/view/exportTable";

export const dynamic = "force-dynamic";

interface Context {
  readonly params: Promise<{ readonly name: string }>;
}

const asked = z.enum(EXPORT_FORMATS);

/** A list of a page as a file, with the page's filters: `?format=csv`, `xlsx` or `json`; sent while it is read. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const actor = await currentActor();
  if (!actor) return new Response("Sign in first.", { status: 401 });
  const { searchParams } = new URL(request.url);
  const format = asked.safeParse(searchParams.get("format") ?? "csv");
  if (!format.success) return new Response("Ask for csv, xlsx or json.", { status: 400 });
  const { name } = await params;
  const asOf = await readAsOf(actor, searchParams.get("asOf") ?? undefined);
  const table = openSavedList(actor, name, { asOf, asked: new Map(searchParams) });
  if (!table) return new Response("There is no such list.", { status: 404 });
  const { type, write } = FILE_FORMS[format.data];
  return new Response(streamOf(write(table)), {
    headers: {
      "Content-Type": type,
      "Content-Disposition": `attachment; filename="${name}-${asOf}.${format.data}"`,
      "X-Content-Type-Options": "nosniff",
      "Cache-Control": "no-store",
    },
  });
}
