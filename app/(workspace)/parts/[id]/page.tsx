import { notFound } from "next/navigation";
import { AsOfLink } from "@/app/_ui/AsOfLink";
import { Breadcrumbs } from "@/app/_ui/Breadcrumbs";
import { Contents } from "@/app/_ui/Contents";
import { LinkButton } from "@/app/_ui/LinkButton";
import { Notice } from "@/app/_ui/Notice";
import { OpenTarget } from "@/app/_ui/OpenTarget";
import { PageHeader } from "@/app/_ui/PageHeader";
import { titled } from "@/app/_ui/titled";
import { AssumedInputs } from "@/app/(workspace)/parts/[id]/_components/AssumedInputs";
import { Cover } from "@/app/(workspace)/parts/[id]/_components/Cover";
import { CoverLadder } from "@/app/(workspace)/parts/[id]/_components/CoverLadder";
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
import { lookingBack } from "@/lib/access/lookingBack";
import { scopeOf } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { readCoverLadder } from "@/lib/data/coverLadder";
import { readPart } from "@/lib/data/part";
import { readPartExperience } from "@/lib/data/partExperience";
import { readMergedInto } from "@/lib/data/partNumbers";
import { readPartSimulation } from "@/lib/data/partSimulation";
import { itemClassName } from "@/lib/view/linePart";

export const generateMetadata = titled("Part");

const CONTENTS = [
  { id: "who-has-one", title: "Who has one" },
  { id: "supply", title: "How it can still be had" },
  { id: "cover", title: "How long the spares last" },
  { id: "ladder", title: "Cover ladder" },
  { id: "identity", title: "What it is" },
  { id: "stock", title: "Book against usable" },
  { id: "repairs", title: "Out for repair" },
  { id: "where-used", title: "Where it is used" },
  { id: "rates", title: "Rates" },
  { id: "downtime", title: "How long it stands" },
  { id: "events", title: "The records behind the rates" },
  { id: "assumed", title: "Assumed inputs" },
] as const;

interface PartPageProps {
  readonly params: Promise<{ readonly id: string }>;
  readonly searchParams: Promise<{
    readonly asOf?: string | string[];
    readonly simulated?: string | string[];
  }>;
}

async function PartPage({ params, searchParams }: PartPageProps) {
  const actor = await signedInActor({ amounts: "hidden" });
  const { asOf: asked, simulated } = await searchParams;
  const asOf = await readAsOf(actor, typeof asked === "string" ? asked : undefined);
  const { id } = await params;
  const part = await readPart(actor, { id, asOf });
  if (!part) notFound();
  const experience = await readPartExperience(actor, { partId: part.id, asOf });
  const ladder = await readCoverLadder(actor, { partId: part.id, asOf });
  const merged = await readMergedInto(actor, part.id);
  const months = simulated === "yes" ? await readPartSimulation(actor, { partId: part.id, asOf }) : null;
  return (
    <>
      <PageHeader
        title={part.number}
        asOf={asOf}
        above={<Breadcrumbs crumbs={[{ label: "Parts", href: "/parts" }]} />}
        actions={<LinkButton href={`/audit?of=part&id=${part.id}`}>History</LinkButton>}
        lead={`${part.description} by ${part.maker} (${itemClassName(part.itemClass)}${part.family === null ? "" : `, family ${part.family.name}`}).`}
      />
      {merged === null ? null : (
        <Notice kind="info" title={`This is ${merged.maker} ${merged.number}`}>
          Somebody found the two to be one part. Its records are at{" "}
          <AsOfLink href={`/parts/${merged.id}`}>{merged.number}</AsOfLink>; the merge can be taken back under{" "}
          <AsOfLink href="/parts/numbers#merged">numbers to settle</AsOfLink>.
        </Notice>
      )}
      <Contents parts={CONTENTS} />
      <WhoHasOne part={part} />
      <Supply part={part} />
      <Cover part={part} simulated={months} />
      <div className="mt-9 border-rule-2 border-t">
        {ladder === null ? null : <CoverLadder ladder={ladder} asOf={asOf} />}
        <Identity part={part} mayEdit={scopeOf(actor.grants, "register:import") === "all"} />
        <StockBySite part={part} />
        <Repairs part={part} />
        <WhereUsed part={part} />
        <Rates part={part} experience={experience} />
        <Downtime part={part} experience={experience} />
        <PartEvents part={part} experience={experience} />
        <AssumedInputs part={part} />
      </div>
      <OpenTarget />
    </>
  );
}

export default lookingBack(PartPage);
