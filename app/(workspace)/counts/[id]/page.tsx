import { notFound } from "next/navigation";
import { Caution } from "@/app/_ui/Caution";
import { Section } from "@/app/_ui/Section";
import { titled } from "@/app/_ui/titled";
import { CountHead } from "@/app/(workspace)/counts/[id]/_components/CountHead";
import { FindForm } from "@/app/(workspace)/counts/[id]/_components/FindForm";
import { PaperSheet } from "@/app/(workspace)/counts/[id]/_components/PaperSheet";
import { SheetLines } from "@/app/(workspace)/counts/[id]/_components/SheetLines";
import { WrittenLines } from "@/app/(workspace)/counts/[id]/_components/WrittenLines";
import { signedInActor } from "@/lib/access/actor";
import { mayAt } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { readCountSheet } from "@/lib/data/count";

export const generateMetadata = titled("Count");

export default async function CountPage({ params }: { readonly params: Promise<{ readonly id: string }> }) {
  const actor = await signedInActor({ amounts: "hidden" });
  const { id } = await params;
  const [asOf, sheet] = await Promise.all([readAsOf(actor, undefined), readCountSheet(actor, id)]);
  if (!sheet) notFound();
  const showsAmounts = mayAt(actor.grants, "money:read", sheet.siteId);
  const writing = sheet.mayCount && sheet.postedOn === null;
  return (
    <>
      <CountHead sheet={sheet} asOf={asOf} view="sheet" showsAmounts={showsAmounts} />
      <Section
        title="Lots along the bins"
        lead="Open a lot, write what you find; it is saved when you leave it. Without a connection it stays on this device and is sent when the connection is back."
      >
        {writing ? (
          <SheetLines countId={sheet.id} lines={sheet.lines} />
        ) : (
          <WrittenLines lines={sheet.lines} />
        )}
        {writing ? <PaperSheet sheet={sheet} /> : null}
      </Section>
      {writing ? (
        <Section
          title="Pieces found without a record"
          lead="Cupboards count. A piece of unknown origin is booked as unproven until somebody tested it."
        >
          <FindForm countId={sheet.id} />
          <Caution title="Pieces of unknown origin">
            They may be altered or counterfeit. Not for safety functions; test on receipt, by competent
            persons, before one goes into a line. Never power a drive that lay for years without the
            maker&apos;s procedure for stored units.
          </Caution>
        </Section>
      ) : null}
    </>
  );
}
