"use client";

import { useRouter } from "next/navigation";
import { useState, useTransition } from "react";
import { Button } from "@/app/_ui/Button";
import { FormMessage } from "@/app/_ui/FormMessage";
import { giveOutReport } from "@/app/(workspace)/report/actions";
import type { ReportDocument } from "@/lib/view/reportDocument";

interface IssueReportProps {
  /** Null is the whole group. */
  readonly siteId: string | null;
  readonly report: Pick<ReportDocument, "kind" | "basis">;
}

/** Gives the report out as it stands on the screen: from then on it is kept and never changes. */
export function IssueReport({ siteId, report: { kind, basis } }: IssueReportProps) {
  const router = useRouter();
  const [pending, start] = useTransition();
  const [problem, setProblem] = useState<string | null>(null);
  const press = () => {
    if (pending) return;
    start(async () => {
      const { asOf, dataVersion } = basis;
      const answer = await giveOutReport({ kind, siteId, asOf, dataVersion });
      if (answer.ok) router.push(`/report/archive/${answer.value.issueId}`);
      else setProblem(answer.error.reason);
    });
  };
  return (
    <div className="no-print mt-3 flex flex-wrap items-center gap-x-4 gap-y-2">
      <Button kind="primary" aria-disabled={pending} onClick={press}>
        {pending ? "Writing its files…" : "Give out this report"}
      </Button>
      <p className="measure text-ink-2 text-sm">
        Keeps it as it stands, with its PDF, slides and workbook, and mails it to who asked for it. What was
        given out does not change any more; a later one stands beside it.
      </p>
      <FormMessage kind="problem">{problem}</FormMessage>
    </div>
  );
}
