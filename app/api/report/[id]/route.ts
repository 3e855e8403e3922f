import { z } from "zod";
import { currentReader } from "@/lib/access/actor";
import { readIssueFile } from "@/lib/data/reportArchive";
import { REPORT_FORMS } from "@/lib/schema/report";
import { formWords } from "@/lib/view/reportArchive";

export const dynamic = "force-dynamic";

interface Context {
  readonly params: Promise<{ readonly id: string }>;
}

const asked = z.enum(REPORT_FORMS);

/** A report that was given out, as the file it was given out in. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const actor = await currentReader();
  if (!actor) return new Response(null, { status: 401 });
  const form = asked.safeParse(new URL(request.url).searchParams.get("as"));
  if (!form.success) return new Response(null, { status: 404 });
  const file = await readIssueFile(actor, { id: (await params).id, form: form.data });
  if (!file) return new Response(null, { status: 404 });
  return new Response(file.bytes, {
    headers: {
      "Content-Type": formWords(form.data).type,
      "Content-Disposition": `attachment; filename="${file.name}"`,
      "Cache-Control": "private, no-store",
      ETag: `"${file.hash}"`,
    },
  });
}
