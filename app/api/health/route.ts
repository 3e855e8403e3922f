import { answersNow } from "@/lib/data/health";

export const dynamic = "force-dynamic";

/** For machines: 200 once the app reaches its database. */
export async function GET(): Promise<Response> {
  const ok = await answersNow();
  return Response.json({ ok }, { status: ok ? 200 : 503 });
}
