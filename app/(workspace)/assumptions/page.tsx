import { notFound } from "next/navigation";
import { Suspense } from "react";
import { PageHeader } from "@/app/_ui/PageHeader";
import { Section } from "@/app/_ui/Section";
import { titled } from "@/app/_ui/titled";
import { AssumptionTable } from "@/app/(workspace)/assumptions/_components/AssumptionTable";
import { Effects } from "@/app/(workspace)/assumptions/_components/Effects";
import { Uses } from "@/app/(workspace)/assumptions/_components/Uses";
import { VersionTable } from "@/app/(workspace)/assumptions/_components/VersionTable";
import { signedInActor } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { readAssumptionEffects } from "@/lib/data/assumptionEffect";
import { readAssumptionOverview } from "@/lib/data/assumptions";
import { assumptionKindName } from "@/lib/view/assumptionSet";

export const generateMetadata = titled("Assumptions");

interface AssumptionsPageProps {
  readonly searchParams: Promise<{ readonly asOf?: string }>;
}

export default async function AssumptionsPage({ searchParams }: AssumptionsPageProps) {
  const actor = await signedInActor();
  const [asOf, overview] = await Promise.all([
    readAsOf(actor, (await searchParams).asOf),
    readAssumptionOverview(actor),
  ]);
  if (overview === null) notFound();
  const { inUse, ownVersion, rows, versions, uses, mayChange } = overview;
  return (
    <>
      <PageHeader
        title="Assumptions"
        lead={`${assumptionKindName(inUse.kind)}, version ${inUse.version}, is in use for every figure of the group. ${mayChange ? "Choose another set, or state values of your own." : "Somebody who may plan at all sites chooses it."}`}
        asOf={asOf}
      />
      <Section
        title="What each set would mean"
        lead="Stop loss a year with its span, computed now under each set and stored nowhere. Careful need not give more than likely where many recorded stops lasted far longer than believed."
      >
        <Suspense fallback={<p role="status">Computing the figures under each set…</p>}>
          <Effects effects={readAssumptionEffects(actor, asOf)} mayChange={mayChange} />
        </Suspense>
      </Section>
      <Section
        title="Every assumption"
        lead="Records pull rates and hours away from these values; where nothing is recorded they stand. Basis, owner and day are those of the value in use."
      >
        <AssumptionTable {...{ rows, ownVersion, mayChange }} />
      </Section>
      <Section title="Versions" lead="A version stays as it was written; any of them can be used again.">
        <VersionTable {...{ versions, inUse, mayChange }} />
        <Uses uses={uses} />
      </Section>
    </>
  );
}
