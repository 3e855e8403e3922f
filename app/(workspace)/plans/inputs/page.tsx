import { Breadcrumbs } from "@/app/_ui/Breadcrumbs";
import { Notice } from "@/app/_ui/Notice";
import { PageHeader } from "@/app/_ui/PageHeader";
import { titled } from "@/app/_ui/titled";
import { FigureGrids } from "@/app/(workspace)/plans/inputs/_components/FigureGrids";
import { OrderRows } from "@/app/(workspace)/plans/inputs/_components/OrderRows";
import { RateTable } from "@/app/(workspace)/plans/inputs/_components/RateTable";
import { WindowRows } from "@/app/(workspace)/plans/inputs/_components/WindowRows";
import { signedInActor } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { readPlanInputs } from "@/lib/data/planInputs";
import { readWritableLines } from "@/lib/data/planLines";
import { figureGrids } from "@/lib/view/figureGrids";
import { missingInputs } from "@/lib/view/planInputs";

export const generateMetadata = titled("Planning inputs");

interface InputsPageProps {
  readonly searchParams: Promise<{ readonly asOf?: string }>;
}

export default async function InputsPage({ searchParams }: InputsPageProps) {
  const actor = await signedInActor();
  const asOf = await readAsOf(actor, (await searchParams).asOf);
  const [inputs, lines] = await Promise.all([readPlanInputs(actor, asOf), readWritableLines(actor)]);
  const missing = inputs.seesGroup ? missingInputs(inputs) : [];
  return (
    <>
      <PageHeader
        title="Planning inputs"
        lead="The money, hands and shutdowns plans are made with: each figure with who answers for it and since when. What nobody stated says so."
        asOf={asOf}
        above={<Breadcrumbs crumbs={[{ label: "Plans", href: "/plans" }]} />}
      />
      {missing.length > 0 ? (
        <Notice kind="problem" title="No plan can be worked out yet">
          {missing.join(" ")}
        </Notice>
      ) : null}
      <FigureGrids grids={figureGrids(inputs)} currencies={inputs.rates.map(({ currency }) => currency)} />
      <WindowRows {...{ windows: inputs.windows, sites: inputs.sites }} />
      <OrderRows {...{ inputs, lines }} />
      <RateTable
        rates={inputs.rates.filter(
          ({ currency }) => inputs.seesGroup || inputs.sites.some((site) => site.currency === currency),
        )}
      />
    </>
  );
}
