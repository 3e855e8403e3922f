import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { currentReader } from "@/lib/access/actor";
import { maySomewhere } from "@/lib/access/policy";
import { isExampleFile } from "@/lib/view/firstSteps";

export const dynamic = "force-dynamic";

interface Context {
  readonly params: Promise<{ readonly file: string }>;
}

/** A register file of the demonstration company, to try an empty installation with. */
export async function GET(_request: Request, { params }: Context): Promise<Response> {
  const actor = await currentReader({ amounts: "hidden" });
  if (!actor) return new Response("Sign in first.", { status: 401 });
  if (!maySomewhere(actor.grants, "register:import"))
    return new Response("Your role does not load registers.", { status: 403 });
  const { file } = await params;
  if (!isExampleFile(file)) return new Response("There is no such file.", { status: 404 });
  const bytes = await readFile(join(process.cwd(), "seed", "registers", file));
  return new Response(new Uint8Array(bytes), {
    headers: {
      "Content-Type": "text/csv; charset=utf-8",
      "Content-Disposition": `attachment; filename="${file}"`,
      "X-Content-Type-Options": "nosniff",
      "Cache-Control": "no-store",
    },
  });
}
