import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { mayAt, scopeOf } from "@/lib/access/policy";
import { change } from "@/lib/data/change";
import { database } from "@/lib/data/client";
import type { DigestTrace } from "@/lib/data/digest";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { ReportForm, ReportKind, SetReportWish } from "@/lib/schema/report";
import { issueTitle } from "@/lib/view/reportArchive";

const SHOWN = 5;

/** A report somebody gets by mail whenever it is given out. */
export interface ReportWish {
  readonly id: string;
  readonly kind: ReportKind;
  /** Null is the group. */
  readonly siteId: string | null;
  readonly siteCode: string | null;
  readonly form: ReportForm;
}

export interface ReportWishes {
  readonly wishes: readonly ReportWish[];
  /** The last mails, with what each brought. */
  readonly mails: readonly (DigestTrace & { readonly title: string })[];
  /** Whether the group's report may be asked for. */
  readonly mayGroup: boolean;
}

const missing: Refusal = { code: "missing", reason: "There is no such report that you may read." };

/** What the person gets by mail, and what became of the last ones. */
export async function readReportWishes(actor: Actor): Promise<ReportWishes> {
  const { userId } = actor;
  const site = { select: { code: true, name: true } } as const;
  const [wishes, mails] = await Promise.all([
    database().reportWish.findMany({ where: { userId }, include: { site }, orderBy: { id: "asc" } }),
    database().reportMail.findMany({
      where: { userId },
      include: { issue: { select: { kind: true, period: true, site } } },
      orderBy: { askedAt: "desc" },
      take: SHOWN,
    }),
  ]);
  return {
    wishes: wishes.map(({ id, kind, siteId, form, site: at }) => ({
      ...{ id, kind, siteId, form, siteCode: at?.code ?? null },
    })),
    mails: mails.map(({ id, askedAt, sentAt, file, tries, problem, issue: { kind, period, site: at } }) => ({
      ...{ id, file, tries, problem },
      askedAt: askedAt.toISOString(),
      sentAt: sentAt?.toISOString() ?? null,
      title: issueTitle({ kind, period, siteCode: at?.code ?? null, siteName: at?.name ?? null }),
    })),
    mayGroup: scopeOf(actor.grants, "read") === "all",
  };
}

/** Starts the mail of a report, changes its paper, or ends it. */
export async function setReportWish(
  actor: Actor,
  { kind, siteId, form }: SetReportWish,
): Promise<Result<null, Refusal>> {
  const { userId, grants } = actor;
  const mayRead = siteId === null ? scopeOf(grants, "read") === "all" : mayAt(grants, "read", siteId);
  return change(actor, async (tx, record) => {
    // One change of a person's wishes at a time: two empty sites would not clash in the index.
    await tx.$queryRaw`SELECT FROM "User" WHERE "id" = ${userId} FOR UPDATE`;
    const { count } = await tx.reportWish.deleteMany({ where: { userId, kind, siteId } });
    const entry = { entity: "ReportWish", entityId: userId, siteId };
    if (form === null) {
      if (count > 0) record({ deed: "report:unwish", ...entry });
      return ok(null);
    }
    if (!mayRead || (siteId !== null && (await tx.site.count({ where: { id: siteId } })) === 0))
      return err(missing);
    await tx.reportWish.create({ data: { userId, kind, siteId, form } });
    record({ deed: "report:wish", ...entry, after: { kind, form } });
    return ok(null);
  });
}
