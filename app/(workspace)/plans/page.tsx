import type { Metadata } from "next";
import { EmptyState } from "@/app/_ui/EmptyState";
import { LinkButton } from "@/app/_ui/LinkButton";
import { PageHeader } from "@/app/_ui/PageHeader";
import { PlanTable } from "@/app/(workspace)/plans/_components/PlanTable";
import { signedInActor } from "@/lib/access/actor";
import { maySomewhere } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { readPlans } from "@/lib/data/plan";

export const metadata: Metadata = { title: "Plans" };

interface PlansPageProps {
  readonly searchParams: Promise<{ readonly asOf?: string }>;
}

export default async function PlansPage({ searchParams }: PlansPageProps) {
  const actor = await signedInActor();
  const asOf = await readAsOf(actor, (await searchParams).asOf);
  const plans = await readPlans(actor);
  const mayPlan = maySomewhere(actor.grants, "plan:write");
  const cut = (
    <LinkButton href="/plans/new" kind={mayPlan ? "primary" : "plain"}>
      {mayPlan ? "Cut by a budget" : "Look at a budget cut"}
    </LinkButton>
  );
  return (
    <>
      <PageHeader
        title="Plans"
        lead="What to retrofit in a year with the money of that year. A plan keeps the ranking and the costs it was cut from."
        asOf={asOf}
        actions={plans.length > 0 ? cut : undefined}
      />
      {plans.length === 0 ? (
        <EmptyState title="No plans yet" actions={cut}>
          {mayPlan
            ? "Type a budget, look where the funding line falls, and keep the cut as a plan."
            : "Nobody has kept a plan with lines of your sites."}
        </EmptyState>
      ) : (
        <PlanTable plans={plans} />
      )}
    </>
  );
}
