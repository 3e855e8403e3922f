import { Breadcrumbs } from "@/app/_ui/Breadcrumbs";
import { EmptyState } from "@/app/_ui/EmptyState";
import { PageHeader } from "@/app/_ui/PageHeader";
import { Section } from "@/app/_ui/Section";
import { AmountsHidden } from "@/app/(workspace)/_components/AmountsHidden";
import { NormTable } from "@/app/(workspace)/lines/[code]/scope/_components/NormTable";
import { ScopeForm } from "@/app/(workspace)/lines/[code]/scope/_components/ScopeForm";
import { ScopeSheet } from "@/app/(workspace)/lines/[code]/scope/_components/ScopeSheet";
import type { LineScope } from "@/lib/data/lineScope";
import type { NormsInForce } from "@/lib/data/scopeNorms";
import type { ScopeRefusal } from "@/lib/retrofit/scope/buildScope";
import type { ScopeView } from "@/lib/view/lineScope";
import { isAmount, normRows } from "@/lib/view/scopeNorm";
import { day } from "@/lib/view/time";

interface LineScopePageProps {
  readonly found: LineScope;
  readonly norms: NormsInForce;
  readonly view: ScopeView;
}

/** What converting a line takes, worked out now from what is on record. */
export function LineScopePage({ found, norms, view }: LineScopePageProps) {
  const { line, facts, showsAmounts, outside } = found;
  const rows = normRows(norms.norms).filter(({ unit }) => showsAmounts || !isAmount(unit));
  return (
    <>
      <PageHeader
        title={`Scope of a retrofit: ${line.code} ${line.name}`}
        lead="What converting the line takes, by what is on record; a draft until a competent person signs it."
        asOf={facts.asOf}
        above={
          <Breadcrumbs
            crumbs={
              outside
                ? [{ label: "Projects", href: "/projects" }]
                : [
                    { label: "Lines", href: "/lines" },
                    { label: line.code, href: `/lines/${encodeURIComponent(line.code)}` },
                  ]
            }
          />
        }
      />
      {showsAmounts ? null : <AmountsHidden />}
      <ScopeForm code={line.code} asOf={facts.asOf} view={view} />
      {view.scope.ok ? (
        <ScopeSheet found={found} norms={norms.norms} view={view} scope={view.scope.value} />
      ) : (
        <Refused refusal={view.scope.error} />
      )}
      <Section
        id="norms"
        title="Norms"
        lead={`Hours, prices and weeks behind the figures, for all sites: common practice, no source; those for adapters, I/O racks, raising firmware, copies and care are guesses. ${norms.changedAt === null ? "As the product brings them." : `Last changed ${day(norms.changedAt.slice(0, 10))}.`}`}
      >
        <NormTable rows={rows} seen={norms.changedAt} mayChange={norms.mayChange && showsAmounts} />
      </Section>
    </>
  );
}

function Refused({ refusal }: { readonly refusal: ScopeRefusal }) {
  if (refusal.kind === "nothing")
    return (
      <EmptyState title="Nothing to convert">
        Every drive of the line is in open supply or of the family asked for.
      </EmptyState>
    );
  return (
    <EmptyState title="The successors on record go in a circle">
      {`No scope can be worked out while parts follow themselves: ${refusal.numbers.join(" → ")}. Correct the register.`}
    </EmptyState>
  );
}
