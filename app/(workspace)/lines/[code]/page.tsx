import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { Dossier } from "@/app/(workspace)/lines/[code]/_components/Dossier";
import { RiskHeld } from "@/app/(workspace)/lines/[code]/_components/RiskHeld";
import { signedInActor } from "@/lib/access/actor";
import { lookingBack } from "@/lib/access/lookingBack";
import { mayAt } from "@/lib/access/policy";
import { readAcceptances } from "@/lib/data/acceptances";
import { readAsOf } from "@/lib/data/asOf";
import { readLine } from "@/lib/data/line";
import { inWords } from "@/lib/words/say";

interface LinePageProps {
  readonly params: Promise<{ readonly code: string }>;
  readonly searchParams: Promise<{ readonly asOf?: string; readonly part?: string }>;
}

export async function generateMetadata({ params }: LinePageProps): Promise<Metadata> {
  return { title: inWords(`Line ${decodeURIComponent((await params).code)}`) };
}

async function LinePage({ params, searchParams }: LinePageProps) {
  const actor = await signedInActor({ amounts: "hidden" });
  const { asOf: asked, part } = await searchParams;
  const asOf = await readAsOf(actor, asked);
  const line = await readLine(actor, { code: decodeURIComponent((await params).code), asOf });
  if (line === null) notFound();
  const acceptances = await readAcceptances(actor, { asOf, lineId: line.id });
  return (
    <>
      <Dossier line={line} part={part} mayEdit={mayAt(actor.grants, "line:write", line.site.id)} />
      <RiskHeld
        {...{ lineId: line.id, code: line.code, acceptances, asOf, showsAmounts: line.showsAmounts }}
        mayAccept={mayAt(actor.grants, "plan:approve", line.site.id)}
      />
    </>
  );
}

export default lookingBack(LinePage);
