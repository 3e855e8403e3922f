import { Caution } from "@/app/_ui/Caution";
import { KeyFigure } from "@/app/_ui/KeyFigure";
import { KeyFigures } from "@/app/_ui/KeyFigures";
import { PageHeader } from "@/app/_ui/PageHeader";
import { Section } from "@/app/_ui/Section";
import { titled } from "@/app/_ui/titled";
import { SparesTabs } from "@/app/(workspace)/_components/SparesTabs";
import { CareTable } from "@/app/(workspace)/care/_components/CareTable";
import { ClassCareTable } from "@/app/(workspace)/care/_components/ClassCareTable";
import { GivenTable } from "@/app/(workspace)/care/_components/GivenTable";
import { HeldTable } from "@/app/(workspace)/care/_components/HeldTable";
import { signedInActor } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { readCareLots, readClassCare, readGivenCare, readHeldPieces } from "@/lib/data/storageCare";
import type { CareState } from "@/lib/spares/careDue";
import { count, plainNumber } from "@/lib/view/number";
import { day } from "@/lib/view/time";

export const generateMetadata = titled("Storage care");

interface CarePageProps {
  readonly searchParams: Promise<{ readonly asOf?: string | string[] }>;
}

export default async function CarePage({ searchParams }: CarePageProps) {
  const actor = await signedInActor({ amounts: "hidden" });
  const { asOf: asked } = await searchParams;
  const [asOf, today] = await Promise.all([
    readAsOf(actor, typeof asked === "string" ? asked : undefined),
    readAsOf(actor, undefined),
  ]);
  const [lots, given, held, { classes, mayChange }] = await Promise.all([
    readCareLots(actor, asOf),
    readGivenCare(actor),
    readHeldPieces(actor),
    readClassCare(actor),
  ]);
  const piecesOf = (state: CareState) =>
    plainNumber(lots.reduce((sum, { care, quantity }) => sum + (care === state ? (quantity ?? 0) : 0), 0));
  const late = lots.filter(({ care }) => care === "overdue" || care === "unknown").length;
  return (
    <>
      <PageHeader
        title="Storage care"
        asOf={asOf}
        lead={`${count(late, "lot waits", "lots wait")} for care. Pieces that lie unpowered age; the chance that they work, and so what is usable, falls until somebody powers them.`}
      />
      <SparesTabs current="/care" />
      <KeyFigures>
        <KeyFigure label="Overdue" value={piecesOf("overdue")} unit="pieces" date={day(asOf)} />
        <KeyFigure label="Never recorded" value={piecesOf("unknown")} unit="pieces" date={day(asOf)} />
        <KeyFigure label="Due within 60 days" value={piecesOf("soon")} unit="pieces" date={day(asOf)} />
      </KeyFigures>
      <Section
        title="What is due"
        id="due"
        lead="Last power-up plus the interval of the class; of batteries the last change recorded here. Stock has no past: these are the shelves as they stand now."
      >
        <Caution title="Only competent persons power stored units">
          Capacitors that lay for years can fail or burst when full voltage is applied at once; wrong
          re-forming destroys them. Follow the maker&apos;s procedure for stored units. De-energise, lock out,
          wait for stored energy and verify the absence of voltage, by national law and the rules of the site.
        </Caution>
        <CareTable lots={lots} asOf={asOf} today={today} by={actor.name} />
      </Section>
      <Section
        title="On hold"
        id="hold"
        lead="Put on hold and let go on the part's page, with a reason and a name."
      >
        <HeldTable held={held} />
      </Section>
      <Section title="Care given" id="given">
        <GivenTable given={given} />
      </Section>
      <Section
        title="How often"
        id="intervals"
        lead="By class of item, for every site. Common practice, no source, until somebody sets another interval."
      >
        <ClassCareTable classes={classes} mayChange={mayChange} />
      </Section>
    </>
  );
}
