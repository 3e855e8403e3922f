import { z } from "zod";
import { Breadcrumbs } from "@/app/_ui/Breadcrumbs";
import { EmptyState } from "@/app/_ui/EmptyState";
import { PageHeader } from "@/app/_ui/PageHeader";
import { titled } from "@/app/_ui/titled";
import { ChoosePlans } from "@/app/(workspace)/plans/compare/_components/ChoosePlans";
import { Comparison } from "@/app/(workspace)/plans/compare/_components/Comparison";
import { signedInActor } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { readPlans } from "@/lib/data/plan";
import { compareBoards } from "@/lib/data/planCompare";

export const generateMetadata = titled("Plans compared");

const MOST = 5;

interface ComparePageProps {
  readonly searchParams: Promise<{ readonly asOf?: string; readonly plan?: string | string[] }>;
}

export default async function ComparePage({ searchParams }: ComparePageProps) {
  const actor = await signedInActor();
  const { asOf: asked, plan } = await searchParams;
  const asOf = await readAsOf(actor, asked);
  const ids = [plan ?? []]
    .flat()
    .filter((id) => z.uuid().safeParse(id).success)
    .slice(0, MOST);
  const [plans, boards] = await Promise.all([compareBoards(actor, ids), readPlans(actor)]);
  const choices = boards.filter(({ kind, totals }) => kind === "board" && totals !== null);
  return (
    <>
      <PageHeader
        title="Plans compared"
        lead="Up to five plans side by side, each worked out on the whole group in the same way, and the ranking spent on the money of the first."
        asOf={asOf}
        above={<Breadcrumbs crumbs={[{ label: "Plans", href: "/plans" }]} />}
      />
      {choices.length === 0 ? (
        <EmptyState title="No plans over years yet">Start one on the page of plans.</EmptyState>
      ) : (
        <ChoosePlans choices={choices} chosen={ids} asOf={asOf} />
      )}
      {plans.length > 0 ? <Comparison plans={plans} /> : null}
    </>
  );
}
