import { EmptyState } from "@/app/_ui/EmptyState";
import { LinkButton } from "@/app/_ui/LinkButton";
import { PageHeader } from "@/app/_ui/PageHeader";
import { titled } from "@/app/_ui/titled";
import { NewBoard } from "@/app/(workspace)/plans/_components/NewBoard";
import { PlanTable } from "@/app/(workspace)/plans/_components/PlanTable";
import { signedInActor } from "@/lib/access/actor";
import { lookingBack } from "@/lib/access/lookingBack";
import { maySomewhere } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { readPlans } from "@/lib/data/plan";

export const generateMetadata = titled("Plans");

interface PlansPageProps {
  readonly searchParams: Promise<{ readonly asOf?: string }>;
}

async function PlansPage({ searchParams }: PlansPageProps) {
  const actor = await signedInActor();
  const asOf = await readAsOf(actor, (await searchParams).asOf);
  const plans = await readPlans(actor);
  const mayPlan = maySomewhere(actor.grants, "plan:write");
  const cut = (
    <>
      {mayPlan ? <NewBoard asOf={asOf} /> : null}
      <LinkButton href="/plans/new">{mayPlan ? "Cut by a budget" : "Look at a budget cut"}</LinkButton>
      <LinkButton href="/plans/compare">Compare plans</LinkButton>
      <LinkButton href="/plans/inputs">Planning inputs</LinkButton>
    </>
  );
  return (
    <>
      <PageHeader
        title="Plans"
        lead="What to retrofit, when and with which money: plans over years on a board of windows, and rankings cut by one year's budget."
        asOf={asOf}
        actions={cut}
      />
      {plans.length === 0 ? (
        <EmptyState title="No plans yet">
          {mayPlan
            ? "Start a plan over years and put ways into windows, or type a budget, look where the funding line falls, and keep the cut."
            : "Nobody has kept a plan with lines of your sites."}
        </EmptyState>
      ) : (
        <PlanTable plans={plans} />
      )}
    </>
  );
}

export default lookingBack(PlansPage);
