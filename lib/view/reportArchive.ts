import type { IsoDate } from "@/lib/kernel/isoDate";
import type { ReportForm, ReportKind } from "@/lib/schema/report";
import type { ReportDocument } from "@/lib/view/reportDocument";
import { day, month } from "@/lib/view/time";

/** A report that was given out, in a list of them. */
export interface IssueMark {
  readonly id: string;
  readonly kind: ReportKind;
  /** Null is the group. */
  readonly siteCode: string | null;
  readonly siteName: string | null;
  readonly period: string;
  readonly asOf: IsoDate;
  readonly dataVersion: number;
  readonly engine: string;
  readonly issuedBy: string;
  /** RFC 3339. */
  readonly issuedAt: string;
  readonly files: readonly IssueFile[];
}

/** Which reports are listed; null is every one. */
export interface IssueChoice {
  readonly kind: ReportKind | null;
  /** Code of a site, or `group`. */
  readonly of: string | null;
}

/** Address of the list with a choice. */
export function issueAddress({ kind, of }: IssueChoice): string {
  const asked = new URLSearchParams({ ...(kind === null ? {} : { kind }), ...(of === null ? {} : { of }) });
  return asked.size === 0 ? "/report/archive" : `/report/archive?${asked.toString()}`;
}

/** The choice an address asks for; what it does not know it takes for every one. */
export function issueChoice({ kind, of }: { readonly kind?: string; readonly of?: string }): IssueChoice {
  return { kind: kind === "monthly" || kind === "weekly" ? kind : null, of: of || null };
}

export interface IssueFile {
  readonly form: ReportForm;
  /** SHA-256 of its bytes, hex. */
  readonly hash: string;
  readonly bytes: number;
}

const FORMS = {
  pdf_a4: { name: "PDF, A4", end: "pdf", type: "application/pdf" },
  pdf_letter: { name: "PDF, Letter", end: "pdf", type: "application/pdf" },
  pptx: {
    name: "Slides",
    end: "pptx",
    type: "application/vnd.openxmlformats-officedocument.presentationml.presentation",
  },
  xlsx: {
    name: "Workbook",
    end: "xlsx",
    type: "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
  },
} as const satisfies Record<ReportForm, { name: string; end: string; type: string }>;

/** What a form of file is called, how its name ends, and its media type. */
export function formWords(form: ReportForm) {
  return FORMS[form];
}

/** Name of a file people save: kind, whose, when, form. */
export function issueFileName(
  { kind, siteCode, period }: Pick<ReportDocument, "kind" | "siteCode" | "period">,
  form: ReportForm,
): string {
  const whose = (siteCode ?? "group").replace(/[^\w.-]/g, "_");
  const paper = form === "pdf_letter" ? "-letter" : "";
  return `${kind}-report-${whose}-${period}${paper}.${FORMS[form].end}`;
}

/** Whose report a mark is of. */
export function issueScope({ siteCode, siteName }: Pick<IssueMark, "siteCode" | "siteName">): string {
  return siteCode === null ? "Group" : `${siteCode} ${siteName ?? ""}`.trim();
}

/** The month or week in words. */
export function periodWords({ kind, period }: Pick<IssueMark, "kind" | "period">): string {
  return kind === "monthly" ? month(`${period}-01`) : `Week ${period}`;
}

/** A report in words: `Monthly report of VEL Velmark, Nov 2026`. */
export function issueTitle(mark: Pick<IssueMark, "kind" | "period" | "siteCode" | "siteName">): string {
  const name = mark.kind === "monthly" ? "Monthly report" : "Weekly changes";
  return `${name} of ${issueScope(mark)}, ${periodWords(mark)}`;
}

/** What a frozen report rests on, in one line. */
export function issueBasis({
  asOf,
  dataVersion,
  engine,
}: Pick<IssueMark, "asOf" | "dataVersion" | "engine">) {
  return `as of ${day(asOf)}, data version ${dataVersion}, engine ${engine}`;
}
