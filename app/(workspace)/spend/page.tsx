import { EmptyState } from "@/app/_ui/EmptyState";
import { LinkButton } from "@/app/_ui/LinkButton";
import { Notice } from "@/app/_ui/Notice";
import { PageHeader } from "@/app/_ui/PageHeader";
import { Section } from "@/app/_ui/Section";
import { titled } from "@/app/_ui/titled";
import { SparesTabs } from "@/app/(workspace)/_components/SparesTabs";
import { BudgetForm } from "@/app/(workspace)/spend/_components/BudgetForm";
import { NotOffered } from "@/app/(workspace)/spend/_components/NotOffered";
import { SpendCurve } from "@/app/(workspace)/spend/_components/SpendCurve";
import { SpendFigures } from "@/app/(workspace)/spend/_components/SpendFigures";
import { SpendMethod } from "@/app/(workspace)/spend/_components/SpendMethod";
import { SpendSums } from "@/app/(workspace)/spend/_components/SpendSums";
import { SpendTable } from "@/app/(workspace)/spend/_components/SpendTable";
import { signedInActor } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { readSpend } from "@/lib/data/spend";
import { money } from "@/lib/view/format";
import { readBudget, spendSums } from "@/lib/view/spend";

export const generateMetadata = titled("Where to spend next");

const DEFAULT_BUDGET = "50000";

interface SpendPageProps {
  readonly searchParams: Promise<{ readonly asOf?: string | string[]; readonly budget?: string | string[] }>;
}

export default async function SpendPage({ searchParams }: SpendPageProps) {
  const actor = await signedInActor();
  const { asOf: asked, budget: typed = DEFAULT_BUDGET } = await searchParams;
  const asOf = await readAsOf(actor, typeof asked === "string" ? asked : undefined);
  const budget = readBudget(typed);
  const list = await readSpend(actor, { asOf, budget: budget ?? 0 });
  return (
    <>
      <PageHeader
        title="Where to spend next"
        asOf={asOf}
        lead={`The next best piece to buy for the money, again and again, to a budget of ${money(budget)}: loss avoided over ${list.years} years, of parts that can still be ordered.`}
        actions={<LinkButton href="/pool">Move before you buy: pool board</LinkButton>}
      />
      <SparesTabs current="/spend" />
      <BudgetForm typed={String(typed)} unreadable={budget === null} asOf={asOf} />
      {list.seesAll ? null : (
        <Notice kind="info">Your sites only: pieces for their shelves, losses of their lines.</Notice>
      )}
      {list.steps.length === 0 ? (
        <EmptyState title="Nothing to buy with this budget">
          No piece that fits it would avoid a loss. Type more, or look below for parts whose price or supply
          date nobody knows.
        </EmptyState>
      ) : (
        <>
          <SpendFigures list={list} />
          <Section title="What the next money avoids" id="curve">
            <SpendCurve curve={list.curve} budget={list.budget} />
          </Section>
          <Section title="The order to place" id="order">
            <SpendSums sums={spendSums(list.steps)} />
          </Section>
          <Section
            title="Piece by piece"
            id="pieces"
            lead="Each piece avoids less for the money than the one before it, unless it helps the next piece of its part more. Open a row for why."
          >
            <SpendTable list={list} />
          </Section>
        </>
      )}
      <SpendMethod list={list} />
      <NotOffered parts={list.notOffered} />
    </>
  );
}
