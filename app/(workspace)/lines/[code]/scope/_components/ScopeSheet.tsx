import { LinkButton } from "@/app/_ui/LinkButton";
import { Section } from "@/app/_ui/Section";
import { AxisTable } from "@/app/(workspace)/lines/[code]/scope/_components/AxisTable";
import { BlockerList } from "@/app/(workspace)/lines/[code]/scope/_components/BlockerList";
import { ControllerTable } from "@/app/(workspace)/lines/[code]/scope/_components/ControllerTable";
import { MoneyTable } from "@/app/(workspace)/lines/[code]/scope/_components/MoneyTable";
import { OptionTable } from "@/app/(workspace)/lines/[code]/scope/_components/OptionTable";
import { OrderTable } from "@/app/(workspace)/lines/[code]/scope/_components/OrderTable";
import { ReleasedTable } from "@/app/(workspace)/lines/[code]/scope/_components/ReleasedTable";
import { ScopeCautions } from "@/app/(workspace)/lines/[code]/scope/_components/ScopeCautions";
import { ScopeFigures } from "@/app/(workspace)/lines/[code]/scope/_components/ScopeFigures";
import { TaskBars } from "@/app/(workspace)/lines/[code]/scope/_components/TaskBars";
import { WindowTable } from "@/app/(workspace)/lines/[code]/scope/_components/WindowTable";
import type { LineScope } from "@/lib/data/lineScope";
import type { Scope } from "@/lib/retrofit/scope/buildScope";
import type { ScopeNorms } from "@/lib/retrofit/scope/scopeNorms";
import { scopeOptions } from "@/lib/retrofit/scope/scopeOptions";
import { allBlockers, datedOrders, firstStep, type ScopeView } from "@/lib/view/lineScope";
import { count } from "@/lib/view/number";

interface ScopeSheetProps {
  readonly found: LineScope;
  readonly norms: ScopeNorms;
  readonly view: ScopeView;
  readonly scope: Scope;
}

/** The scope from what is in the way to what it sets free. */
export function ScopeSheet({ found, norms, view, scope }: ScopeSheetProps) {
  const { facts, line, showsAmounts } = found;
  const { window, target } = view;
  const options = scopeOptions({ facts, full: scope, window: window?.window ?? null, target, norms });
  const file = new URLSearchParams({ target, asOf: facts.asOf, window: window?.window.id ?? "" });
  return (
    <>
      <ScopeFigures scope={scope} window={window} showsAmounts={showsAmounts} />
      <Section id="in-the-way" title={`In the way: ${firstStep(scope, window)}`}>
        <BlockerList blockers={allBlockers(scope, window)} controllers={scope.controllers.length} />
        <ScopeCautions />
      </Section>
      <Section
        id="options"
        title="Ways to treat the line"
        lead="From nothing to a new line. Weeks are those of all crews at work, without approval, delivery and waiting. How much loss each way leaves is not worked out here."
      >
        <OptionTable options={options} showsAmounts={showsAmounts} />
      </Section>
      <Section
        id="axes"
        title={`Axes: ${count(scope.axes.length, "axis", "axes")} to ${target}`}
        lead="A part that follows is a candidate: its rating, supply and braking have to be checked for each axis."
      >
        <AxisTable scope={scope} />
      </Section>
      <Section
        id="controllers"
        title="Controllers, rings and I/O"
        lead="A ring is in series: all its nodes are converted together, or a second network runs beside it."
      >
        <ControllerTable scope={scope} />
      </Section>
      <Section id="window" title="Windows">
        <WindowTable scope={scope} norms={norms} windows={view.windows} />
      </Section>
      <Section
        id="tasks"
        title="Tasks"
        lead="Working days at typical norms, sized by axes and machines; the longest way is marked."
      >
        <TaskBars schedule={scope.schedule} />
      </Section>
      <Section id="money" title={showsAmounts ? "Hours and money" : "Hours"}>
        <MoneyTable money={scope.money} norms={norms} showsAmounts={showsAmounts} />
      </Section>
      <Section
        id="orders"
        title="Parts to order"
        actions={
          showsAmounts ? (
            <LinkButton href={`/api/scope/${encodeURIComponent(line.code)}?${file}`} download>
              Parts as CSV
            </LinkButton>
          ) : null
        }
      >
        <OrderTable
          orders={datedOrders(scope, window, norms)}
          asOf={facts.asOf}
          {...{ scope, norms, window, showsAmounts }}
        />
      </Section>
      <Section
        id="released"
        title="Drives set free"
        lead="They protect the lines that still wait, if they are tested and booked."
      >
        <ReleasedTable released={scope.released} />
      </Section>
    </>
  );
}
