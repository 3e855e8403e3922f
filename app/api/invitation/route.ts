import { acceptInvitation } from "@/lib/access/acceptInvitation";
import { isSameOrigin } from "@/lib/access/sameOrigin";
import * as schema from "@/lib/schema/invitation";

/** Open to the signed-out: the one-time token is the permission. */
export async function POST(request: Request): Promise<Response> {
  if (!isSameOrigin(request)) return new Response(null, { status: 403 });
  const read = schema.acceptInvitation.safeParse(await request.json().catch(() => null));
  if (read.success) return Response.json(await acceptInvitation(read.data));
  const fields = Object.fromEntries(read.error.issues.map(({ path, message }) => [path.join("."), message]));
  const error = { code: "invalid", reason: "Some entries cannot be used.", fields };
  return Response.json({ ok: false, error });
}
