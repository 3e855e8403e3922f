import { notFound } from "next/navigation";
import { IssueReport } from "@/app/(workspace)/report/_components/IssueReport";
import { NoReport } from "@/app/(workspace)/report/_components/NoReport";
import { ReportChoice } from "@/app/(workspace)/report/_components/ReportChoice";
import { Sheets } from "@/app/(workspace)/report/_components/Sheet";
import "@/app/(workspace)/report/_components/report.css";
import { titled } from "@/app/_ui/titled";
import { signedInActor } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { readReport } from "@/lib/data/report";
import { mayIssue } from "@/lib/data/reportIssue";
import { readWeek } from "@/lib/data/reportWeek";
import type { ReportInput, ReportSite } from "@/lib/view/report";
import { monthlyReport } from "@/lib/view/reportMonth";
import { weeklyReport } from "@/lib/view/reportWeek";

export const generateMetadata = titled("Report");

interface ReportPageProps {
  readonly searchParams: Promise<{
    readonly asOf?: string;
    readonly site?: string;
    readonly kind?: string;
  }>;
}

export default async function ReportPage({ searchParams }: ReportPageProps) {
  const actor = await signedInActor();
  const { asOf: asked, site: code, kind } = await searchParams;
  const asOf = await readAsOf(actor, asked);
  const input = await readReport(actor, { asOf, siteCode: code ?? null });
  if (!input) return code === undefined ? <NoReport asOf={asOf} /> : notFound();
  const site = onlySite(input);
  const report =
    kind === "weekly" && site ? weeklyReport(await readWeek(actor, { site, asOf })) : monthlyReport(input);
  const siteId = site?.id ?? null;
  return (
    <div className="report">
      <ReportChoice choices={input.choices} chosen={code ?? null} site={report.siteCode} kind={report.kind} />
      {(site || input.wholeGroup) && mayIssue(actor, siteId) ? (
        <IssueReport siteId={siteId} report={report} />
      ) : null}
      <Sheets report={report} />
    </div>
  );
}

/** The one site a report is of; null where it is of several. */
function onlySite({ sites }: ReportInput): ReportSite | null {
  const [only, another] = sites;
  return another === undefined ? (only ?? null) : null;
}
