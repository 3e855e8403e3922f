import "server-only";
import type { Actor } from "@/lib/access/actor";
import { fixedDay } from "@/lib/data/asOf";
import { database } from "@/lib/data/client";
import { composeReport, freezeReport, makeReport } from "@/lib/data/group/freezeReport";
import { queueReport } from "@/lib/data/group/queueReport";
import { type Locale, languageOf, PLAIN } from "@/lib/kernel/locale";
import { mostCommon } from "@/lib/kernel/mostCommon";
import { type ReportSlot, slotName, slotsDue } from "@/lib/view/reportSlot";
import { readAs } from "@/lib/words/reading";
import { readerOf } from "@/lib/words/wish";

/**
 * Asks for the reports of the week and the month that are due by the clock of each site; the group goes by the clock
 * of most of its sites. Whoever asks at the same time, each is made once.
 *
 * An installation that stands at one day makes none by itself: its months do not end.
 *
 * @param instant RFC 3339.
 * @param zone    IANA name of the group's zone.
 * @returns How many were asked for now.
 */
export async function askDueReports(instant: string, zone: string): Promise<number> {
  const db = database();
  if ((await fixedDay(db)) !== null) return 0;
  const sites = await db.site.findMany({ select: { id: true, timeZone: true }, orderBy: { code: "asc" } });
  if (sites.length === 0) return 0;
  const places = [
    ...sites.map(({ id, timeZone }) => ({ siteId: id, zone: timeZone })),
    ...(sites.length > 1 ? [{ siteId: null, zone }] : []),
  ];
  const due = places.flatMap((place) => slotsDue(instant, place));
  const made = await db.reportIssue.findMany({
    where: { slot: { in: due.map(slotName) } },
    select: { slot: true },
  });
  const done = new Set(made.map(({ slot }) => slot));
  const open = due.filter((slot) => !done.has(slotName(slot)));
  for (const slot of open) await queueReport(db, slot);
  return open.length;
}

/** Who reads for the timetable: one site and no other, or all of them. */
const timetable = (siteId: string | null): Actor => ({
  ...{ userId: "", name: "Timetable", email: "" },
  grants: [{ role: "viewer", siteId }],
});

/** Makes one report that is due, if nobody made it yet. */
export async function issueDueReport(asked: ReportSlot): Promise<void> {
  const db = database();
  const slot = slotName(asked);
  if ((await db.reportIssue.count({ where: { slot } })) > 0) return;
  const actor = timetable(asked.siteId);
  const document = await composeReport(actor, asked);
  if (document === null) return;
  const made = await readAs(await readerOfWishes(asked), () => makeReport(asked, document));
  await db.$transaction(async (tx) => {
    // Held until the transaction ends: whoever makes the same report meanwhile finds it kept.
    await tx.$queryRaw`SELECT pg_advisory_xact_lock(hashtextextended(${slot}, 0))::text`;
    if ((await tx.reportIssue.count({ where: { slot } })) > 0) return;
    const id = await freezeReport(tx, made, { issuedBy: actor.name, slot });
    await tx.auditEntry.create({
      data: { deed: "report:issue", entity: "ReportIssue", entityId: id, siteId: asked.siteId },
    });
  });
}

/** How the files are written, which are the same for all: in the language most of those read who get them by mail. */
async function readerOfWishes({ kind, siteId }: ReportSlot): Promise<Locale> {
  const wishes = await database().reportWish.findMany({
    where: { kind, siteId, user: { NOT: { banned: true } } },
    ...{ orderBy: { userId: "asc" }, select: { user: { select: { language: true } } } },
  });
  const language = mostCommon(wishes.map(({ user }) => languageOf(user.language) ?? PLAIN.language));
  return readerOf({ language, numbers: null }, PLAIN);
}
