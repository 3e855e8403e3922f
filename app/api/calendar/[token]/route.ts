import { actorOfCalendar } from "@/lib/access/calendarToken";
import { readAsOf } from "@/lib/data/asOf";
import { readDatesAhead } from "@/lib/data/datesAhead";
import { authUrl } from "@/lib/env";
import { calendarDays } from "@/lib/view/calendarDays";
import { datesAhead } from "@/lib/view/datesAhead";
import { icalendar } from "@/lib/view/icalendar";

export const dynamic = "force-dynamic";

interface CalendarRoute {
  readonly params: Promise<{ readonly token: string }>;
}

/** The dates ahead of one person as a calendar; the secret in the address is the permission. */
export async function GET(_request: Request, { params }: CalendarRoute): Promise<Response> {
  const actor = await actorOfCalendar((await params).token);
  if (!actor)
    return new Response("There is no such calendar. Make a new address under Your account.", { status: 404 });
  const asOf = await readAsOf(actor, undefined);
  const dates = datesAhead(await readDatesAhead(actor, asOf));
  const days = calendarDays(dates, { asOf, base: authUrl() });
  const text = icalendar(days, { name: "Ebbline, dates ahead", madeAt: new Date().toISOString() });
  return new Response(text, {
    headers: {
      "Content-Type": "text/calendar; charset=utf-8",
      "Content-Disposition": 'inline; filename="ebbline-dates.ics"',
      "Cache-Control": "private, no-store",
    },
  });
}
