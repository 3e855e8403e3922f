import type { Actor } from "@/lib/access/actor";
import { actorOfCalendar } from "@/lib/access/calendarToken";
import { readAsOf } from "@/lib/data/asOf";
import { readDatesAhead } from "@/lib/data/datesAhead";
import { readerOfMail } from "@/lib/data/reading";
import { authUrl } from "@/lib/env";
import { calendarDays } from "@/lib/view/calendarDays";
import { datesAhead } from "@/lib/view/datesAhead";
import { icalendar } from "@/lib/view/icalendar";
import { readAs } from "@/lib/words/reading";
import { inWords } from "@/lib/words/say";

export const dynamic = "force-dynamic";

interface CalendarRoute {
  readonly params: Promise<{ readonly token: string }>;
}

/** The dates ahead of one person as a calendar; the secret in the address is the permission. */
export async function GET(_request: Request, { params }: CalendarRoute): Promise<Response> {
  const actor = await actorOfCalendar((await params).token);
  if (!actor)
    return new Response("There is no such calendar. Make a new address under Your account.", { status: 404 });
  return readAs(await readerOfMail(actor), () => calendarOf(actor));
}

async function calendarOf(actor: Actor): Promise<Response> {
  const asOf = await readAsOf(actor, undefined);
  const dates = datesAhead(await readDatesAhead(actor, asOf));
  const days = calendarDays(dates, { asOf, base: authUrl() }).map((one) => ({
    ...one,
    summary: inWords(one.summary),
    description: inWords(one.description),
  }));
  const text = icalendar(days, { name: inWords("Ebbline, dates ahead"), madeAt: new Date().toISOString() });
  return new Response(text, {
    headers: {
      "Content-Type": "text/calendar; charset=utf-8",
      "Content-Disposition": 'inline; filename="ebbline-dates.ics"',
      "Cache-Control": "private, no-store",
    },
  });
}
