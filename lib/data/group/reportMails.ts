import "server-only";
import { readAmountsReader } from "@/lib/access/actor";
import { mayAt, scopeOf } from "@/lib/access/policy";
import { database } from "@/lib/data/client";
import { deliverOnce } from "@/lib/data/group/deliverOnce";
import type { Deliver, ReadyMail } from "@/lib/data/group/readyMail";
import { readerOfMail } from "@/lib/data/reading";
import { authUrl } from "@/lib/env";
import { formWords, issueFileName } from "@/lib/view/reportArchive";
import type { ReportDocument } from "@/lib/view/reportDocument";
import { reportMail } from "@/lib/view/reportMail";
import { readAs } from "@/lib/words/reading";
import { inWords } from "@/lib/words/say";

/**
 * Sends one report by mail, if it has not left yet. What somebody may no longer read is not sent.
 *
 * @throws What the delivery threw, after keeping it with the mail, so that the queue tries again.
 */
export async function sendReport(mailId: string, deliver: Deliver): Promise<void> {
  const db = database();
  const mail = await db.reportMail.findUnique({ where: { id: mailId } });
  if (!mail || mail.sentAt !== null) return;
  const ready = await compose(mail);
  if (ready === null) {
    await db.reportMail.delete({ where: { id: mailId } });
    return;
  }
  await deliverOnce(ready, deliver, (data) => db.reportMail.update({ where: { id: mailId }, data }));
}

type StoredMail = NonNullable<Awaited<ReturnType<ReturnType<typeof database>["reportMail"]["findUnique"]>>>;

async function compose({ id, userId, issueId, form }: StoredMail): Promise<ReadyMail | null> {
  const [actor, issue] = await Promise.all([
    readAmountsReader(userId),
    database().reportIssue.findUnique({
      where: { id: issueId },
      select: { siteId: true, document: true, files: { where: { form }, select: { bytes: true } } },
    }),
  ]);
  const [file] = issue?.files ?? [];
  if (!actor || !issue || !file) return null;
  const { siteId } = issue;
  const mayRead =
    siteId === null ? scopeOf(actor.grants, "read") === "all" : mayAt(actor.grants, "read", siteId);
  if (!mayRead) return null;
  const document = issue.document as unknown as ReportDocument;
  const mail = { document, issueId, address: authUrl(), say: inWords };
  return {
    ...{ id, to: actor.email, ...readAs(await readerOfMail(actor), () => reportMail(mail)) },
    attachments: [
      {
        filename: issueFileName(document, form),
        content: Buffer.from(file.bytes),
        contentType: formWords(form).type,
      },
    ],
  };
}
