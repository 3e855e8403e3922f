import { notFound } from "next/navigation";
import { z } from "zod";
import { Breadcrumbs } from "@/app/_ui/Breadcrumbs";
import { LinkButton } from "@/app/_ui/LinkButton";
import { PageHeader } from "@/app/_ui/PageHeader";
import { titled } from "@/app/_ui/titled";
import { BoardScreen } from "@/app/(workspace)/plans/[id]/_components/board/BoardScreen";
import { PlanFigures } from "@/app/(workspace)/plans/[id]/_components/PlanFigures";
import { PlanLines } from "@/app/(workspace)/plans/[id]/_components/PlanLines";
import { PlanSteps } from "@/app/(workspace)/plans/[id]/_components/PlanSteps";
import { type Actor, signedInActor } from "@/lib/access/actor";
import { lookingBack } from "@/lib/access/lookingBack";
import { type Deed, mayAt } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { readPlan } from "@/lib/data/plan";
import { readBoard } from "@/lib/data/planBoard";
import { type PlanPage as Plan, planStatusWords } from "@/lib/view/plan";

export const generateMetadata = titled("Plan");

interface PlanPageProps {
  readonly params: Promise<{ readonly id: string }>;
  readonly searchParams: Promise<{ readonly asOf?: string }>;
}

async function PlanPage({ params, searchParams }: PlanPageProps) {
  const actor = await signedInActor();
  const { id } = await params;
  const asOf = await readAsOf(actor, (await searchParams).asOf);
  const plan = z.uuid().safeParse(id).success ? await readPlan(actor, id) : null;
  if (!plan) notFound();
  const startable =
    plan.status === "funded"
      ? plan.rows
          .filter((row) => row.funded && mayAt(actor.grants, "project:write", row.siteId))
          .map((row) => row.id)
      : [];
  const board = plan.kind === "board" ? await readBoard(actor, { planId: id, whole: false }) : null;
  if (board)
    return (
      <>
        <BoardScreen
          page={board}
          mayPlan={mayEverywhere(actor, plan, "plan:write")}
          mayApprove={mayEverywhere(actor, plan, "plan:approve")}
        />
        {plan.status === "funded" ? <PlanLines plan={plan} startable={startable} /> : null}
      </>
    );
  return (
    <>
      <PageHeader
        title={plan.name}
        lead={`${planStatusWords(plan.status)}. Retrofits of ${plan.year}, kept by ${plan.createdBy}.`}
        asOf={asOf}
        above={<Breadcrumbs crumbs={[{ label: "Plans", href: "/plans" }]} />}
        actions={<LinkButton href={`/audit?of=plan&id=${plan.id}`}>History</LinkButton>}
      />
      <PlanSteps
        {...{ id: plan.id, version: plan.version, status: plan.status, name: plan.name }}
        started={plan.rows.some((row) => row.project !== null)}
        mayPlan={mayEverywhere(actor, plan, "plan:write")}
        mayApprove={mayEverywhere(actor, plan, "plan:approve")}
      />
      <PlanFigures plan={plan} />
      <PlanLines plan={plan} startable={startable} />
    </>
  );
}

export default lookingBack(PlanPage);

/** Only somebody with the deed at the site of every line changes a plan. */
function mayEverywhere(actor: Actor, plan: Plan, deed: Deed): boolean {
  return plan.totals !== null && plan.rows.every((row) => mayAt(actor.grants, deed, row.siteId));
}
