import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { Breadcrumbs } from "@/app/_ui/Breadcrumbs";
import { PageHeader } from "@/app/_ui/PageHeader";
import { AssumedInputs } from "@/app/(workspace)/parts/[id]/_components/AssumedInputs";
import { Cover } from "@/app/(workspace)/parts/[id]/_components/Cover";
import { Downtime } from "@/app/(workspace)/parts/[id]/_components/Downtime";
import { Identity } from "@/app/(workspace)/parts/[id]/_components/Identity";
import { PartEvents } from "@/app/(workspace)/parts/[id]/_components/PartEvents";
import { Rates } from "@/app/(workspace)/parts/[id]/_components/Rates";
import { Repairs } from "@/app/(workspace)/parts/[id]/_components/Repairs";
import { StockBySite } from "@/app/(workspace)/parts/[id]/_components/StockBySite";
import { Supply } from "@/app/(workspace)/parts/[id]/_components/Supply";
import { WhereUsed } from "@/app/(workspace)/parts/[id]/_components/WhereUsed";
import { WhoHasOne } from "@/app/(workspace)/parts/[id]/_components/WhoHasOne";
import { signedInActor } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { readPart } from "@/lib/data/part";
import { readPartExperience } from "@/lib/data/partExperience";
import { readPartSimulation } from "@/lib/data/partSimulation";
import { itemClassName } from "@/lib/view/linePart";

export const metadata: Metadata = { title: "Part" };

interface PartPageProps {
  readonly params: Promise<{ readonly id: string }>;
  readonly searchParams: Promise<{
    readonly asOf?: string | string[];
    readonly simulated?: string | string[];
  }>;
}

export default async function PartPage({ params, searchParams }: PartPageProps) {
  const actor = await signedInActor();
  const { asOf: asked, simulated } = await searchParams;
  const asOf = await readAsOf(actor, typeof asked === "string" ? asked : undefined);
  const { id } = await params;
  const part = await readPart(actor, { id, asOf });
  if (!part) notFound();
  const experience = await readPartExperience(actor, { partId: part.id, asOf });
  const months = simulated === "yes" ? await readPartSimulation(actor, { partId: part.id, asOf }) : null;
  return (
    <>
      <PageHeader
        title={part.number}
        asOf={asOf}
        above={<Breadcrumbs crumbs={[{ label: "Parts", href: "/parts" }]} />}
        lead={`${part.description} by ${part.maker} (${itemClassName(part.itemClass)}${part.family === null ? "" : `, family ${part.family.name}`}).`}
      />
      <WhoHasOne part={part} />
      <Identity part={part} />
      <Supply part={part} />
      <Cover part={part} simulated={months} />
      <Rates part={part} experience={experience} />
      <Downtime part={part} experience={experience} />
      <PartEvents part={part} experience={experience} />
      <StockBySite part={part} />
      <Repairs part={part} />
      <WhereUsed part={part} />
      <AssumedInputs part={part} />
    </>
  );
}
