import { notFound } from "next/navigation";
import { titled } from "@/app/_ui/titled";
import { CardHead } from "@/app/(card)/machines/[id]/card/_components/CardHead";
import { CardPlaces } from "@/app/(card)/machines/[id]/card/_components/CardPlaces";
import { CardSection } from "@/app/(card)/machines/[id]/card/_components/CardSection";
import { Cautions } from "@/app/(card)/machines/[id]/card/_components/Cautions";
import { Contacts } from "@/app/(card)/machines/[id]/card/_components/Contacts";
import { ControllerCopies } from "@/app/(card)/machines/[id]/card/_components/ControllerCopies";
import { SparesOfPart } from "@/app/(card)/machines/[id]/card/_components/SparesOfPart";
import { signedInActor } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { readNightCard } from "@/lib/data/nightCard";
import "./card.css";

export const generateMetadata = titled("Night card");

interface CardPageProps {
  readonly params: Promise<{ readonly id: string }>;
  readonly searchParams: Promise<{ readonly asOf?: string }>;
}

/** One page for a breakdown at night; the only page kept for use without a network. */
export default async function CardPage({ params, searchParams }: CardPageProps) {
  const actor = await signedInActor({ amounts: "hidden" });
  const asOf = await readAsOf(actor, (await searchParams).asOf);
  const card = await readNightCard(actor, { id: (await params).id, asOf });
  if (card === null) notFound();
  const { machine, parts } = card;
  return (
    <main className="card">
      <CardHead card={card} />
      <Cautions />
      <CardSection id="call" title="Whom to call">
        <Contacts contacts={card.contacts} />
      </CardSection>
      <CardSection
        id="spares"
        title="Spares"
        lead={`Bins at ${machine.site.name} first. From another site: about ${card.transferHours} h on the way (assumed).`}
      >
        {parts.length === 0 ? <p>No part of this machine is identified.</p> : null}
        <div className="card-columns">
          {parts.map((part) => (
            <SparesOfPart key={part.id} part={part} machine={machine} />
          ))}
        </div>
      </CardSection>
      <CardSection id="copies" title="Controller and copies">
        <ControllerCopies card={card} />
      </CardSection>
      <CardSection id="installed" title="What is installed">
        <CardPlaces machine={machine} />
      </CardSection>
    </main>
  );
}
