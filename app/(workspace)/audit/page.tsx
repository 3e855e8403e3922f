import { AsOfLink } from "@/app/_ui/AsOfLink";
import { Breadcrumbs } from "@/app/_ui/Breadcrumbs";
import { EmptyState } from "@/app/_ui/EmptyState";
import { PageHeader } from "@/app/_ui/PageHeader";
import { titled } from "@/app/_ui/titled";
import { AuditFilters } from "@/app/(workspace)/audit/_components/AuditFilters";
import { AuditTable } from "@/app/(workspace)/audit/_components/AuditTable";
import { signedInActor } from "@/lib/access/actor";
import { readAudit } from "@/lib/data/audit";
import { readZone } from "@/lib/data/readerZone";
import { readAuditQuestion } from "@/lib/view/audit/auditQuestion";

export const generateMetadata = titled("Changes");

interface AuditPageProps {
  readonly searchParams: Promise<Readonly<Record<string, string | string[]>>>;
}

export default async function ChangesPage({ searchParams }: AuditPageProps) {
  const actor = await signedInActor({ amounts: "hidden" });
  const asked = await searchParams;
  const question = readAuditQuestion(asked);
  const { lines, next, of } = await readAudit(actor, question);
  return (
    <>
      <PageHeader
        title={of === null ? "Changes" : `Changes of ${of.label}`}
        lead="Who changed what and when, what stood there before and after, and why where somebody said so. Nothing here can be changed or removed."
        above={of === null ? undefined : <Breadcrumbs crumbs={[{ label: of.label, href: of.href }]} />}
      />
      <AuditFilters question={question} />
      {lines.length === 0 ? (
        <EmptyState title="No changes here">
          Nobody changed anything that you may see under these choices. Files that were loaded are under
          Import.
        </EmptyState>
      ) : (
        <AuditTable lines={lines} zone={await readZone(actor)} />
      )}
      <nav aria-label="Pages of changes" className="mt-4 flex flex-wrap gap-4">
        {question.after === undefined ? null : <AsOfLink href={hrefOf(asked, null)}>Newest</AsOfLink>}
        {next === null ? null : <AsOfLink href={hrefOf(asked, next)}>Older</AsOfLink>}
      </nav>
    </>
  );
}

function hrefOf(asked: Readonly<Record<string, string | string[]>>, after: string | null): string {
  const params = new URLSearchParams(
    Object.entries(asked).flatMap(([name, value]) => (typeof value === "string" ? [[name, value]] : [])),
  );
  params.delete("after");
  if (after !== null) params.set("after", after);
  return params.size === 0 ? "/audit" : `/audit?${params}`;
}
