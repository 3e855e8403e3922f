import { z } from "zod";
import { isIsoDate } from "@/lib/kernel/isoDate";

export const REPORT_KINDS = ["monthly", "weekly"] as const;
export const REPORT_FORMS = ["pdf_a4", "pdf_letter", "pptx", "xlsx"] as const;

export type ReportKind = (typeof REPORT_KINDS)[number];
export type ReportForm = (typeof REPORT_FORMS)[number];

const day = z.string().refine(isIsoDate, "Write a day that exists, as 2027-09-30.");
const kind = z.enum(REPORT_KINDS);
/** Null is the whole group. */
const siteId = z.uuid("Choose a site.").nullable();

/** Freezes what is shown; the data version is that of the page the person looked at. */
export const issueReport = z.strictObject({ kind, siteId, asOf: day, dataVersion: z.int().nonnegative() });

/** Starts the mail of a report, changes its paper, or (null) ends it. */
export const setReportWish = z
  .strictObject({ kind, siteId, form: z.enum(["pdf_a4", "pdf_letter"]).nullable() })
  .refine(({ kind: of, siteId: site }) => of === "monthly" || site !== null, {
    message: "The week is told by site; choose one.",
    path: ["siteId"],
  });

/** A report that the timetable asks the queue for. */
export const reportSlot = z.strictObject({ kind, siteId, period: z.string(), asOf: day });

export type IssueReport = z.output<typeof issueReport>;
export type SetReportWish = z.output<typeof setReportWish>;
