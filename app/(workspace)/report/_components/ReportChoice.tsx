"use client";

import { AsOfLink } from "@/app/_ui/AsOfLink";
import { Button } from "@/app/_ui/Button";
import type { ReportSite } from "@/lib/view/report";

interface ReportChoiceProps {
  readonly choices: readonly ReportSite[];
  /** Code of the site shown; null is all of them. */
  readonly chosen: string | null;
}

/** Which report is shown, and the way onto paper. */
export function ReportChoice({ choices, chosen }: ReportChoiceProps) {
  const all = choices.length > 1 ? [{ code: null, name: "All sites", href: "/report" }] : [];
  const one = choices.map(({ code, name }) => ({
    code,
    name,
    href: `/report?site=${encodeURIComponent(code)}`,
  }));
  return (
    <div className="no-print flex flex-wrap items-center justify-between gap-3">
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
      <Button kind="primary" onClick={() => window.print()}>
        Print, two A4 pages
      </Button>
    </div>
  );
}
