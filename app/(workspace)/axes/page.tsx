import { LinkButton } from "@/app/_ui/LinkButton";
import { PageHeader } from "@/app/_ui/PageHeader";
import { titled } from "@/app/_ui/titled";
import { AxisFilters } from "@/app/(workspace)/axes/_components/AxisFilters";
import { AxisTable } from "@/app/(workspace)/axes/_components/AxisTable";
import { signedInActor } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { countAxes, readAxes, readAxisChoices } from "@/lib/data/axes";
import { readAxisFilter } from "@/lib/view/axisList";
import { count } from "@/lib/view/number";

export const generateMetadata = titled("Axes");

interface AxesPageProps {
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
}

export default async function AxesPage({ searchParams }: AxesPageProps) {
  const actor = await signedInActor({ amounts: "hidden" });
  const asked = new URLSearchParams(
    Object.entries(await searchParams).flatMap(([name, value]) =>
      typeof value === "string" ? [[name, value]] : [],
    ),
  );
  const asOf = await readAsOf(actor, asked.get("asOf") ?? undefined);
  const filter = readAxisFilter(asked);
  const [page, axes, choices] = await Promise.all([
    readAxes(actor, { asOf, filter, after: null }),
    countAxes(actor, { asOf, filter }),
    readAxisChoices(actor),
  ]);
  const question = asked.toString();
  return (
    <>
      <PageHeader
        title="Axes"
        lead={`${count(axes, "axis", "axes")} with drive, motor, panel, network and scaling; cables, travel and homing under “Columns”.`}
        asOf={asOf}
        actions={<LinkButton href="/installed">Installed map</LinkButton>}
      />
      <AxisFilters filter={filter} choices={choices} total={axes} />
      <AxisTable key={question} question={question} filter={filter} first={page} />
    </>
  );
}
