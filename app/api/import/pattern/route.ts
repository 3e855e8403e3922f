import { currentReader } from "@/lib/access/actor";
import { maySomewhere } from "@/lib/access/policy";
import { isRegisterKey, REGISTERS } from "@/lib/intake/registers";
import { writeCsv } from "@/lib/intake/writeCsv";
import { registerPattern } from "@/lib/view/importPattern";

/** Tells a spreadsheet that the text is UTF-8, so that it shows all letters. */
const BYTE_ORDER_MARK = "\uFEFF";

/** A register's column names with example rows, as a CSV file to start from. */
export async function GET(request: Request): Promise<Response> {
  const actor = await currentReader({ amounts: "hidden" });
  if (!actor) return new Response("Sign in first.", { status: 401 });
  if (!maySomewhere(actor.grants, "register:import"))
    return new Response("Your role does not load registers.", { status: 403 });
  const register = new URL(request.url).searchParams.get("register") ?? "";
  if (!isRegisterKey(register)) return new Response("There is no such register.", { status: 404 });
  const text = BYTE_ORDER_MARK + writeCsv(registerPattern(REGISTERS[register]), { separator: ";" });
  return new Response(text, {
    headers: {
      "Content-Type": "text/csv; charset=utf-8",
      "Content-Disposition": `attachment; filename="${register}-pattern.csv"`,
      "Cache-Control": "no-store",
    },
  });
}
