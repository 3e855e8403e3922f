import { EmptyState } from "@/app/_ui/EmptyState";
import { LinkButton } from "@/app/_ui/LinkButton";
import { PageHeader } from "@/app/_ui/PageHeader";
import { titled } from "@/app/_ui/titled";
import { IssueFilter } from "@/app/(workspace)/report/archive/_components/IssueFilter";
import { IssueTable } from "@/app/(workspace)/report/archive/_components/IssueTable";
import { signedInActor } from "@/lib/access/actor";
import { scopeOf } from "@/lib/access/policy";
import { readZone } from "@/lib/data/readerZone";
import { readIssues } from "@/lib/data/reportArchive";
import { readSiteNames } from "@/lib/data/siteNames";
import { count } from "@/lib/view/number";
import { issueChoice } from "@/lib/view/reportArchive";

export const generateMetadata = titled("Reports given out");

interface ArchivePageProps {
  readonly searchParams: Promise<{ readonly kind?: string; readonly of?: string }>;
}

export default async function ArchivePage({ searchParams }: ArchivePageProps) {
  const actor = await signedInActor();
  const chosen = issueChoice(await searchParams);
  const [issues, sites] = await Promise.all([readIssues(actor, chosen), readSiteNames(actor)]);
  const zone = await readZone(actor);
  return (
    <>
      <PageHeader
        title="Reports given out"
        lead={`${count(issues.length, "report")} of your sites, each as it was given out: neither its figures nor its files change any more.`}
        actions={<LinkButton href="/report">The report as it reads now</LinkButton>}
      />
      <IssueFilter chosen={chosen} sites={sites} hasGroup={scopeOf(actor.grants, "read") === "all"} />
      {issues.length === 0 ? (
        <EmptyState title="None yet" actions={<LinkButton href="/report">To the report</LinkButton>}>
          Give out a report on its page. By itself one is made of each site every Monday and on the first of
          each month, from six by the clock of the site.
        </EmptyState>
      ) : (
        <IssueTable issues={issues} zone={zone} />
      )}
    </>
  );
}
