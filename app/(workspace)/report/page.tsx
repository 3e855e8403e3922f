import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { NoReport } from "@/app/(workspace)/report/_components/NoReport";
import { ReportChoice } from "@/app/(workspace)/report/_components/ReportChoice";
import { RiskSheet } from "@/app/(workspace)/report/_components/RiskSheet";
import { WorkSheet } from "@/app/(workspace)/report/_components/WorkSheet";
import "@/app/(workspace)/report/_components/report.css";
import { signedInActor } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { readReport } from "@/lib/data/report";

export const metadata: Metadata = { title: "Monthly report" };

interface ReportPageProps {
  readonly searchParams: Promise<{ readonly asOf?: string; readonly site?: string }>;
}

export default async function ReportPage({ searchParams }: ReportPageProps) {
  const actor = await signedInActor();
  const { asOf: asked, site } = await searchParams;
  const asOf = await readAsOf(actor, asked);
  const report = await readReport(actor, { asOf, siteCode: site ?? null });
  if (!report) return site === undefined ? <NoReport asOf={asOf} /> : notFound();
  return (
    <div className="report">
      <ReportChoice choices={report.choices} chosen={site ?? null} />
      <RiskSheet report={report} />
      <WorkSheet report={report} />
    </div>
  );
}
