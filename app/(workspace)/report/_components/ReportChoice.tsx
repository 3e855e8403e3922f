"use client";

import { AsOfLink } from "@/app/_ui/AsOfLink";
import { Button } from "@/app/_ui/Button";
import type { ReportKind } from "@/lib/schema/report";
import type { ReportSite } from "@/lib/view/report";

interface ReportChoiceProps {
  readonly choices: readonly ReportSite[];
  /** Code of the site asked for; null is all of them. */
  readonly chosen: string | null;
  /** Code of the one site shown; null where several are. */
  readonly site: string | null;
  readonly kind: ReportKind;
}

/** Which report is shown, and the ways onto paper and into the archive. */
export function ReportChoice({ choices, chosen, site, kind }: ReportChoiceProps) {
  const all = choices.length > 1 ? [{ code: null, name: "All sites", href: "/report" }] : [];
  const one = choices.map(({ code, name }) => ({
    code,
    name,
    href: `/report?site=${encodeURIComponent(code)}`,
  }));
  const ofSite = site === null ? "" : `?site=${encodeURIComponent(site)}`;
  return (
    <div className="no-print grid gap-3">
      <nav aria-label="Reports" className="flex flex-wrap gap-2">
        {[...all, ...one].map(({ code, name, href }) => (
          <AsOfLink
            key={href}
            href={href}
            className="button"
            aria-current={code === chosen ? "page" : undefined}
          >
            {code === null ? name : `${code} ${name}`}
          </AsOfLink>
        ))}
      </nav>
      <div className="flex flex-wrap items-center justify-between gap-3">
        <nav aria-label="Kinds of report" className="flex flex-wrap gap-2">
          <AsOfLink
            href={`/report${ofSite}`}
            className="button"
            aria-current={kind === "monthly" ? "page" : undefined}
          >
            The month
          </AsOfLink>
          {site === null ? null : (
            <AsOfLink
              href={`/report${ofSite}&kind=weekly`}
              className="button"
              aria-current={kind === "weekly" ? "page" : undefined}
            >
              The week
            </AsOfLink>
          )}
          <AsOfLink href="/report/archive" className="button">
            Archive
          </AsOfLink>
        </nav>
        <Button onClick={() => window.print()}>Print</Button>
      </div>
    </div>
  );
}
