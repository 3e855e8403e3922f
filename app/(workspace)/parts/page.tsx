import { LinkButton } from "@/app/_ui/LinkButton";
import { PageHeader } from "@/app/_ui/PageHeader";
import { titled } from "@/app/_ui/titled";
import { PartsTable } from "@/app/(workspace)/parts/_components/PartsTable";
import { signedInActor } from "@/lib/access/actor";
import { lookingBack } from "@/lib/access/lookingBack";
import { readAsOf } from "@/lib/data/asOf";
import { readParts } from "@/lib/data/partList";
import { count, plainNumber } from "@/lib/view/number";

export const generateMetadata = titled("Parts");

interface PartsPageProps {
  readonly searchParams: Promise<{ readonly asOf?: string | string[] }>;
}

async function PartsPage({ searchParams }: PartsPageProps) {
  const actor = await signedInActor({ amounts: "hidden" });
  const { asOf: asked } = await searchParams;
  const asOf = await readAsOf(actor, typeof asked === "string" ? asked : undefined);
  const parts = await readParts(actor, asOf);
  const installed = parts.filter((part) => part.installed > 0).length;
  return (
    <>
      <PageHeader
        title="Parts"
        asOf={asOf}
        actions={<LinkButton href="/parts/numbers">Numbers to settle</LinkButton>}
        lead={`${count(parts.length, "part")} on record, ${plainNumber(installed)} of them installed somewhere in the group. Usable pieces and chances are those of the whole group.`}
      />
      <PartsTable parts={parts} asOf={asOf} />
    </>
  );
}

export default lookingBack(PartsPage);
