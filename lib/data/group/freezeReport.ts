import "server-only";
import type { Actor } from "@/lib/access/actor";
import type { Transaction } from "@/lib/data/change";
import { queueReportMail } from "@/lib/data/group/queueReport";
import { readReport } from "@/lib/data/report";
import { readWeek } from "@/lib/data/reportWeek";
import { readSiteNames } from "@/lib/data/siteNames";
import { authUrl } from "@/lib/env";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { reportFiles, type WrittenFile } from "@/lib/reports/reportFiles";
import type { ReportKind } from "@/lib/schema/report";
import type { ReportDocument } from "@/lib/view/reportDocument";
import { monthlyReport } from "@/lib/view/reportMonth";
import { weeklyReport } from "@/lib/view/reportWeek";
import type { Prisma } from "@/prisma/generated/client";

/** Which report is asked for. */
export interface ReportAsked {
  readonly kind: ReportKind;
  /** Null is the whole group. */
  readonly siteId: string | null;
  readonly asOf: IsoDate;
}

/** A report with its files, ready to be kept. */
export interface MadeReport extends ReportAsked {
  readonly document: ReportDocument;
  readonly files: readonly WrittenFile[];
}

/** The report as it reads now; null where the actor sees no such site, or not the whole group. */
export async function composeReport(
  actor: Actor,
  { kind, siteId, asOf }: ReportAsked,
): Promise<ReportDocument | null> {
  if (siteId === null) {
    const input = kind === "monthly" ? await readReport(actor, { asOf, siteCode: null }) : null;
    return input?.wholeGroup ? monthlyReport(input) : null;
  }
  const site = (await readSiteNames(actor)).find(({ id }) => id === siteId);
  if (!site) return null;
  if (kind === "weekly") return weeklyReport(await readWeek(actor, { site, asOf }));
  const input = await readReport(actor, { asOf, siteCode: site.code });
  return input && monthlyReport(input);
}

/** Writes the files of a report. */
export async function makeReport(asked: ReportAsked, document: ReportDocument): Promise<MadeReport> {
  return { ...asked, document, files: await reportFiles(document, authUrl()) };
}

interface Giver {
  /** Name of who gives it out. */
  readonly issuedBy: string;
  /** What the timetable asked for; null for a person. */
  readonly slot: string | null;
}

/** Keeps a report for good and asks for its mails, in the transaction it is given. */
export async function freezeReport(
  tx: Transaction,
  { kind, siteId, asOf, document, files }: MadeReport,
  giver: Giver,
): Promise<string> {
  const { engine, assumptions, seed, dataVersion } = document.basis;
  const { id } = await tx.reportIssue.create({
    data: {
      ...{ kind, siteId, engine, assumptions, seed, dataVersion, period: document.period, ...giver },
      asOf: new Date(`${asOf}T00:00:00Z`),
      document: document as unknown as Prisma.InputJsonValue,
      files: { create: files.map(({ form, hash, bytes }) => ({ form, hash, bytes })) },
    },
    select: { id: true },
  });
  const wishes = await tx.reportWish.findMany({
    where: { kind, siteId, user: { NOT: { banned: true } } },
    select: { userId: true, form: true },
  });
  for (const wish of wishes) await queueReportMail(tx, { issueId: id, ...wish });
  return id;
}
