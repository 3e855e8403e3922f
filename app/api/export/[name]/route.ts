import { z } from "zod";
import { type Actor, currentReader } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { lookBack, lookBackOrNow, lookBackPieces } from "@/lib/data/lookBack";
import { readPastGround } from "@/lib/data/pastGround";
import { openSavedList } from "@/lib/data/savedList";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { streamOf } from "@/lib/reports/streamOf";
import { FILE_FORMS } from "@/lib/reports/table/savedFile";
import { EXPORT_FORMATS } from "@/lib/view/exportTable";
import { KNOWN, knownWords, readKnownAt } from "@/lib/view/knownAt";

export const dynamic = "force-dynamic";

interface Context {
  readonly params: Promise<{ readonly name: string }>;
}

const asked = z.enum(EXPORT_FORMATS);

/**
 * A list of a page as a file, with the page's filters: `?format=csv`, `xlsx` or `json`; sent while it is read.
 *
 * With the page's `known` it holds what was on record then, and its name says so.
 */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const actor = await currentReader({ amounts: "hidden" });
  if (!actor) return new Response("Sign in first.", { status: 401 });
  const { searchParams } = new URL(request.url);
  const format = asked.safeParse(searchParams.get("format") ?? "csv");
  if (!format.success) return new Response("Ask for csv, xlsx or json.", { status: 400 });
  const { name } = await params;
  const known = readKnownAt(searchParams.get(KNOWN));
  const asOf = await lookBackOrNow(known, () => readAsOf(actor, searchParams.get("asOf") ?? undefined));
  if (known !== null && !(await lookBack(known, () => isKnown(actor, asOf, name))))
    return new Response("How the records stood then is not known.", { status: 409 });
  const found = openSavedList(actor, name, { asOf, asked: new Map(searchParams) });
  if (!found) return new Response("There is no such list.", { status: 404 });
  const table =
    known === null ? found : { ...found, title: `${found.title}, as known on ${knownWords(known)}` };
  const { type, write } = FILE_FORMS[format.data];
  const pieces = known === null ? write(table) : await lookBackPieces(known, () => write(table));
  const file =
    known === null
      ? `${name}-${asOf}`
      : `${name}-${asOf}-as-known-${known.text.replace(":", "").replaceAll("/", "-")}`;
  return new Response(streamOf(pieces), {
    headers: {
      "Content-Type": type,
      "Content-Disposition": `attachment; filename="${file}.${format.data}"`,
      "X-Content-Type-Options": "nosniff",
      "Cache-Control": "no-store",
    },
  });
}

/** Of a day whose records are not kept the ranking is known where a snapshot of it was taken, and nothing else. */
async function isKnown(actor: Actor, asOf: IsoDate, name: string): Promise<boolean> {
  const ground = await readPastGround(actor, asOf);
  return ground === "records" || (ground === "snapshot" && name === "lines");
}
