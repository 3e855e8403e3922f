import { notFound } from "next/navigation";
import { Breadcrumbs } from "@/app/_ui/Breadcrumbs";
import { Sheets } from "@/app/(workspace)/report/_components/Sheet";
import { IssueFiles } from "@/app/(workspace)/report/archive/_components/IssueFiles";
import "@/app/(workspace)/report/_components/report.css";
import { titled } from "@/app/_ui/titled";
import { signedInActor } from "@/lib/access/actor";
import { readZone } from "@/lib/data/readerZone";
import { readIssue } from "@/lib/data/reportArchive";
import { zonedMoment } from "@/lib/view/zone";

export const generateMetadata = titled("A report given out");

interface IssuePageProps {
  readonly params: Promise<{ readonly id: string }>;
}

export default async function IssuePage({ params }: IssuePageProps) {
  const actor = await signedInActor();
  const issue = await readIssue(actor, (await params).id);
  if (!issue) notFound();
  const { mark, document } = issue;
  const zone = await readZone(actor);
  return (
    <div className="report">
      <div className="no-print grid gap-3">
        <Breadcrumbs
          crumbs={[
            { label: "Report", href: "/report" },
            { label: "Given out", href: "/report/archive" },
          ]}
        />
        <p className="measure">
          Given out {zonedMoment(mark.issuedAt, zone)} by {mark.issuedBy}, and kept as it was: the figures are
          those of the day below, not of today. A figure leads to its page as that reads now.
        </p>
        <IssueFiles issue={mark} />
      </div>
      <Sheets report={document} />
    </div>
  );
}
