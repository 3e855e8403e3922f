import { createFirstAdmin, firstAdmin } from "@/lib/access/firstAdmin";

/** Open to the signed-out: the one-time token is the permission. */
export async function POST(request: Request): Promise<Response> {
  const read = firstAdmin.safeParse(await request.json().catch(() => null));
  if (!read.success) {
    const fields = Object.fromEntries(
      read.error.issues.map(({ path, message }) => [path.join("."), message]),
    );
    return Response.json({
      ok: false,
      error: { code: "invalid", reason: "Some entries cannot be used.", fields },
    });
  }
  return Response.json(await createFirstAdmin(read.data));
}
