import "server-only";
import { readAmountsReader } from "@/lib/access/actor";
import { grantOf, grantsInForce } from "@/lib/access/grants";
import { mayAt, withAmounts } from "@/lib/access/policy";
import { fixedDay, readAsOf } from "@/lib/data/asOf";
import { database } from "@/lib/data/client";
import { deliverOnce } from "@/lib/data/group/deliverOnce";
import { queueDigest } from "@/lib/data/group/queueDigest";
import type { Deliver, ReadyMail } from "@/lib/data/group/readyMail";
import { readerOfMail } from "@/lib/data/reading";
import { readMyLateActions } from "@/lib/data/reviewActions";
import { readReviewFigures } from "@/lib/data/reviewFigures";
import { readSiteNames } from "@/lib/data/siteNames";
import { authUrl } from "@/lib/env";
import { digestMail } from "@/lib/view/digest";
import { dayAt, isMorningDue } from "@/lib/view/weekly";
import { readAs } from "@/lib/words/reading";
import { inWords } from "@/lib/words/say";

/**
 * Asks for the week's mails that are due by the clock of each person's site, each once, whoever asks at the same time.
 *
 * An installation that stands at one day sends none by itself: its week does not end.
 *
 * @param instant RFC 3339.
 * @returns How many were asked for now.
 */
export async function askDueDigests(instant: string): Promise<number> {
  const db = database();
  if ((await fixedDay(db)) !== null) return 0;
  const digests = await db.digest.findMany({
    where: { user: { NOT: { banned: true } } },
    select: {
      ...{ userId: true, siteId: true },
      site: { select: { timeZone: true } },
      user: { select: { grants: grantsInForce() } },
    },
  });
  const due = digests.filter(
    ({ siteId, site, user }) =>
      mayAt(withAmounts(user.grants.map(grantOf)), "read", siteId) && isMorningDue(instant, site.timeZone),
  );
  return db.$transaction(async (tx) => {
    const made = await tx.digestMail.createManyAndReturn({
      data: due.map(({ userId, site }) => ({
        userId,
        weekOf: new Date(`${dayAt(instant, site.timeZone)}T00:00:00Z`),
      })),
      skipDuplicates: true,
      select: { id: true },
    });
    for (const { id } of made) await queueDigest(tx, id);
    return made.length;
  });
}

/**
 * Sends one mail, if it has not left yet. What somebody may no longer read is not sent.
 *
 * @throws What the delivery threw, after keeping it with the mail, so that the queue tries again.
 */
export async function sendDigest(mailId: string, deliver: Deliver): Promise<void> {
  const db = database();
  const mail = await db.digestMail.findUnique({
    where: { id: mailId },
    select: {
      id: true,
      sentAt: true,
      userId: true,
      user: { select: { digest: { select: { siteId: true } } } },
    },
  });
  if (!mail || mail.sentAt !== null) return;
  const ready = await compose(mail.id, mail.userId, mail.user.digest?.siteId ?? null);
  if (ready === null) {
    await db.digestMail.delete({ where: { id: mailId } });
    return;
  }
  await deliverOnce(ready, deliver, (data) => db.digestMail.update({ where: { id: mailId }, data }));
}

/** The mail with what its reader may see now; null where that is nothing any more. */
async function compose(id: string, userId: string, siteId: string | null): Promise<ReadyMail | null> {
  const actor = await readAmountsReader(userId);
  const site = actor && (await readSiteNames(actor)).find((one) => one.id === siteId);
  if (!actor || !site) return null;
  const asOf = await readAsOf(actor, undefined);
  const [{ figures }, late] = await Promise.all([
    readReviewFigures(actor, { site, asOf }),
    readMyLateActions(actor, { siteId: site.id, asOf }),
  ]);
  const mail = { figures, late, address: authUrl(), say: inWords };
  return { id, to: actor.email, ...readAs(await readerOfMail(actor), () => digestMail(mail)) };
}
