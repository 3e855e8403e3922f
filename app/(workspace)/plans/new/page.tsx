import { Breadcrumbs } from "@/app/_ui/Breadcrumbs";
import { EmptyState } from "@/app/_ui/EmptyState";
import { PageHeader } from "@/app/_ui/PageHeader";
import { titled } from "@/app/_ui/titled";
import { CutAddress } from "@/app/(workspace)/plans/new/_components/CutAddress";
import { CutBasis } from "@/app/(workspace)/plans/new/_components/CutBasis";
import { CutForm } from "@/app/(workspace)/plans/new/_components/CutForm";
import { CutOutcome } from "@/app/(workspace)/plans/new/_components/CutOutcome";
import { CutTable } from "@/app/(workspace)/plans/new/_components/CutTable";
import { KeepPlan } from "@/app/(workspace)/plans/new/_components/KeepPlan";
import { signedInActor } from "@/lib/access/actor";
import { maySomewhere } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { readCandidates } from "@/lib/data/planCandidates";
import { readScopeNorms } from "@/lib/data/scopeNorms";
import { costNormsOf } from "@/lib/retrofit/scope/scopeNorms";
import { planCut } from "@/lib/view/planCut";
import { isUnreadableBudget, readPlanQuery, type SearchParams } from "@/lib/view/planQuery";

export const generateMetadata = titled("Budget cut");

interface CutPageProps {
  readonly searchParams: Promise<SearchParams>;
}

export default async function CutPage({ searchParams }: CutPageProps) {
  const actor = await signedInActor();
  const params = await searchParams;
  const asOf = await readAsOf(actor, typeof params.asOf === "string" ? params.asOf : undefined);
  const [candidates, { norms }] = await Promise.all([readCandidates(actor, asOf), readScopeNorms(actor)]);
  const query = readPlanQuery(params, Number(asOf.slice(0, 4)) + 1);
  const cut = planCut(candidates.lines, query);
  const mayKeep = maySomewhere(actor.grants, "plan:write") && cut.outcome?.ok === true;
  return (
    <CutAddress query={query} asOf={asOf}>
      <PageHeader
        title={`Budget cut ${query.year}`}
        lead="Ranked lines down to where the money ends. What a line costs to retrofit is an estimate from norms until somebody types a better figure."
        asOf={asOf}
        above={<Breadcrumbs crumbs={[{ label: "Plans", href: "/plans" }]} />}
      />
      <CutForm query={query} asOf={asOf} unreadable={isUnreadableBudget(params)} />
      {candidates.lines.length === 0 ? (
        <EmptyState title="No lines to rank">
          Your sites have no lines yet. Take over an asset register first.
        </EmptyState>
      ) : (
        <>
          <CutOutcome cut={cut} query={query} />
          {mayKeep ? <KeepPlan query={query} asOf={asOf} dataVersion={candidates.dataVersion} /> : null}
          <CutTable cut={cut} query={query} />
          <CutBasis candidates={candidates} norms={costNormsOf(norms)} />
        </>
      )}
    </CutAddress>
  );
}
