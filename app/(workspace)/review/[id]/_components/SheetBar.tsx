"use client";

import { Breadcrumbs } from "@/app/_ui/Breadcrumbs";
import { Button } from "@/app/_ui/Button";
import { LinkButton } from "@/app/_ui/LinkButton";

interface SheetBarProps {
  readonly reviewId: string;
  readonly siteCode: string;
  readonly hasBuys: boolean;
}

/** The ways from a held review: back, onto paper, its purchase list as files. */
export function SheetBar({ reviewId, siteCode, hasBuys }: SheetBarProps) {
  const file = (form: "csv" | "xlsx") => `/api/review/${reviewId}?as=${form}`;
  return (
    <div className="no-print mb-4 flex flex-wrap items-center justify-between gap-3">
      <Breadcrumbs
        crumbs={[
          { label: "Weekly review", href: "/review" },
          { label: siteCode, href: `/review?site=${encodeURIComponent(siteCode)}` },
        ]}
      />
      <div className="flex flex-wrap gap-2">
        {hasBuys ? (
          <>
            <LinkButton href={file("csv")} download>
              Purchase list as CSV
            </LinkButton>
            <LinkButton href={file("xlsx")} download>
              Purchase list as XLSX
            </LinkButton>
          </>
        ) : null}
        <Button kind="primary" onClick={() => window.print()}>
          Print
        </Button>
      </div>
    </div>
  );
}
