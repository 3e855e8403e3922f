import type { Refusal } from "@/lib/access/action";
import { currentReader } from "@/lib/access/actor";
import { maySomewhere } from "@/lib/access/policy";
import { isSameOrigin } from "@/lib/access/sameOrigin";
import { type HandedIn, stageImport } from "@/lib/data/import";
import { fileLimits } from "@/lib/env";
import { isRegisterKey } from "@/lib/intake/registers";
import { err, ok, type Result } from "@/lib/kernel/result";
import { type FileLimits, registerFile, tooLarge } from "@/lib/schema/registerFile";

/** Takes a register file as it comes, `?register=stock&name=shelf.csv`: the body is the file itself, kept in pieces. */
export async function POST(request: Request): Promise<Response> {
  if (!isSameOrigin(request))
    return refuse(403, { code: "forbidden", reason: "Hand the file in on the page." });
  const actor = await currentReader({ amounts: "hidden" });
  if (!actor)
    return refuse(401, {
      code: "signedOut",
      reason: "You are signed out. Sign in again; nothing was changed.",
    });
  if (!maySomewhere(actor.grants, "register:import"))
    return refuse(403, {
      code: "forbidden",
      reason: "Your role does not load registers. Ask an administrator.",
    });
  const announced = readAnnounced(request, fileLimits());
  if (!announced.ok) return refuse(422, announced.error);
  try {
    const answer = await stageImport(actor, announced.value);
    return Response.json(answer, { status: answer.ok ? 200 : 422 });
  } catch (error) {
    if (error instanceof TooLong) return refuse(413, { code: "invalid", reason: error.message });
    throw error;
  }
}

/** What the request says of the file, with its bytes as they come. */
function readAnnounced(request: Request, limits: FileLimits): Result<HandedIn, Refusal> {
  const asked = new URL(request.url).searchParams;
  const read = registerFile(limits).safeParse({
    register: asked.get("register") ?? "",
    name: asked.get("name") ?? "",
    size: Number(request.headers.get("content-length") ?? 1),
  });
  if (!read.success) return err(invalid(read.error.issues));
  const { register, name } = read.data;
  if (!isRegisterKey(register) || !request.body)
    return err({ code: "invalid", reason: "Choose the register it holds, and a file." });
  return ok({ register, fileName: name, bytes: heldTo(request.body, limits) });
}

function refuse(status: number, error: Refusal): Response {
  return Response.json({ ok: false, error }, { status });
}

function invalid(
  issues: readonly { readonly path: readonly PropertyKey[]; readonly message: string }[],
): Refusal {
  const fields = Object.fromEntries(issues.map(({ path, message }) => [path.join("."), message]));
  return { code: "invalid", reason: "Some entries cannot be used. Nothing was changed.", fields };
}

class TooLong extends Error {}

/** The bytes as they come, as long as they are no more than a file of their kind may have, whatever was announced. */
async function* heldTo(body: ReadableStream<Uint8Array>, limits: FileLimits): AsyncGenerator<Uint8Array> {
  const reader = body.getReader();
  let size = 0;
  let most = limits.text;
  for (;;) {
    const { done, value } = await reader.read();
    if (done) return;
    // Workbooks are archives, whatever their name ends in.
    if (size === 0 && value[0] === 0x50 && value[1] === 0x4b) most = limits.workbook;
    size += value.length;
    if (size > most) {
      await reader.cancel();
      throw new TooLong(tooLarge(most));
    }
    yield value;
  }
}
