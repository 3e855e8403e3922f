import type { ReactNode } from "react";
import { assumptionSetName } from "@/lib/view/assumptionSet";
import type { ReportInput } from "@/lib/view/report";
import { day, month } from "@/lib/view/time";

interface SheetProps {
  readonly report: ReportInput;
  readonly page: 1 | 2;
  readonly title: string;
  readonly children: ReactNode;
}

/** One A4 page of the report with its head and foot. */
export function Sheet({ report, page, title, children }: SheetProps) {
  const { asOf, engine, dataVersion, assumptionSet } = report;
  const Heading = page === 1 ? "h1" : "h2";
  return (
    <section className="report-sheet" aria-label={`Page ${page}: ${title}`}>
      <header className="double-rule flex flex-wrap items-baseline justify-between gap-x-6 pt-2">
        <Heading className="font-semibold text-xl">
          {page === 1 ? `Monthly report, ${month(asOf)}` : title}
        </Heading>
        <p className="text-sm">
          {scopeName(report)} · as of {day(asOf)}
        </p>
      </header>
      {children}
      <footer className="report-foot report-note flex flex-wrap justify-between gap-x-6">
        <span>
          As of {day(asOf)} · engine {engine} · data version {dataVersion} ·{" "}
          {assumptionSetName(assumptionSet)} · money in EUR at the budget rate unless said otherwise
        </span>
        <span>Page {page} of 2</span>
      </footer>
    </section>
  );
}

/** Whose report it is. */
export function scopeName({ sites, wholeGroup }: ReportInput): string {
  const [only] = sites;
  if (wholeGroup) return `Group, ${sites.length} sites`;
  if (sites.length === 1 && only) return `${only.code} ${only.name}`;
  return sites.map(({ code }) => code).join(", ");
}
