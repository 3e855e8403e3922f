import { currentReader } from "@/lib/access/actor";
import { readNoticeSource } from "@/lib/data/notices";

interface Context {
  readonly params: Promise<{ readonly noticeId: string }>;
}

/** A notice as it was received, as a file to keep; never shown inside the page, as anybody may have written it. */
export async function GET(_request: Request, { params }: Context): Promise<Response> {
  const actor = await currentReader({ amounts: "hidden" });
  if (!actor) return new Response("Sign in first.", { status: 401 });
  const source = await readNoticeSource(actor, (await params).noticeId);
  if (!source) return new Response("There is no such file.", { status: 404 });
  const name = source.name === "pasted text" ? "notice.txt" : source.name;
  return new Response(source.bytes, {
    headers: {
      "Content-Type": "application/octet-stream",
      "Content-Disposition": `attachment; filename*=UTF-8''${encodeURIComponent(name)}`,
      "X-Content-Type-Options": "nosniff",
      "Cache-Control": "no-store",
    },
  });
}
