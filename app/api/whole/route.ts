import { createWriteStream } from "node:fs";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Readable } from "node:stream";
import { pipeline } from "node:stream/promises";
import type { ReadableStream as WebStream } from "node:stream/web";
import { currentReader } from "@/lib/access/actor";
import { isSameOrigin } from "@/lib/access/sameOrigin";
import { readAsOf } from "@/lib/data/asOf";
import { readCopyDesk, takeInWhole, takeOutWhole } from "@/lib/data/wholeCopy";
import { streamOf } from "@/lib/reports/streamOf";

export const dynamic = "force-dynamic";

/** The whole installation as one archive, without what people sign in with. */
export async function GET(): Promise<Response> {
  const actor = await currentReader();
  if (!actor) return new Response("Sign in first.", { status: 401 });
  const out = await takeOutWhole(actor);
  if (!out.ok) return new Response(out.error.reason, { status: 403 });
  const { pieces, end } = out.value;
  return new Response(streamOf(pieces, end), {
    headers: {
      "Content-Type": "application/zip",
      "Content-Disposition": `attachment; filename="ebbline-installation-${await readAsOf(actor, undefined)}.zip"`,
      "Cache-Control": "no-store",
    },
  });
}

/** Fills an empty installation from an archive: the file is the body. */
export async function POST(request: Request): Promise<Response> {
  if (!isSameOrigin(request)) return refused("Hand the file in on the page.", 403);
  const actor = await currentReader();
  if (!actor) return refused("Sign in first; nothing was written.", 401);
  const desk = await readCopyDesk(actor);
  if (!desk) return refused("Only an administrator of all sites takes a copy in.", 403);
  if (!desk.empty)
    return refused("This installation is not empty; a copy is only taken into an empty one.", 409);
  if (!request.body) return refused("Choose a file.", 400);
  const folder = await mkdtemp(join(tmpdir(), "ebbline-copy-"));
  try {
    const file = join(folder, "copy.zip");
    await pipeline(Readable.fromWeb(request.body as WebStream), createWriteStream(file, { mode: 0o600 }));
    return Response.json(await takeInWhole(actor, file));
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

const refused = (reason: string, status: number) =>
  Response.json({ ok: false, error: { code: "impossible", reason } }, { status });
