import { Breadcrumbs } from "@/app/_ui/Breadcrumbs";
import { LinkButton } from "@/app/_ui/LinkButton";
import { PageHeader } from "@/app/_ui/PageHeader";
import { Section } from "@/app/_ui/Section";
import { titled } from "@/app/_ui/titled";
import { LikePairs } from "@/app/(workspace)/parts/numbers/_components/LikePairs";
import { Merges } from "@/app/(workspace)/parts/numbers/_components/Merges";
import { OpenNumbers } from "@/app/(workspace)/parts/numbers/_components/OpenNumbers";
import { SaidNumbers } from "@/app/(workspace)/parts/numbers/_components/SaidNumbers";
import { signedInActor } from "@/lib/access/actor";
import { maySomewhere } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { readPartNumbers } from "@/lib/data/partNumbers";
import { count } from "@/lib/view/number";

export const generateMetadata = titled("Numbers to settle");

interface Props {
  readonly searchParams: Promise<{ readonly asOf?: string }>;
}

export default async function PartNumbersPage({ searchParams }: Props) {
  const actor = await signedInActor({ amounts: "hidden" });
  const asOf = await readAsOf(actor, (await searchParams).asOf);
  const numbers = await readPartNumbers(actor);
  const mayWrite = maySomewhere(actor.grants, "register:import");
  const { everySite } = numbers;
  return (
    <>
      <PageHeader
        above={<Breadcrumbs crumbs={[{ label: "Parts", href: "/parts" }]} />}
        title="Numbers to settle"
        lead={`${count(numbers.openCount, "number")} of files that nothing on record is called, and ${count(numbers.pairs.length, "pair")} of parts that may be one. Nothing is taken for the same until a person says so.`}
        asOf={asOf}
        actions={mayWrite && everySite ? <LinkButton href="/parts/merge">Merge two parts</LinkButton> : null}
      />
      <Section
        title="Numbers of files"
        lead="Suggestions are ranked by how much of the number, the maker and the text agree; the figure orders them and is no chance."
      >
        <OpenNumbers numbers={numbers.open} {...{ mayWrite, everySite, of: numbers.openCount }} />
      </Section>
      <Section
        title="Parts on record that may be one"
        lead="Their numbers differ by separators, by letters that look like digits, or by the maker's spelling only."
      >
        <LikePairs pairs={numbers.pairs} mayWrite={mayWrite && everySite} />
      </Section>
      {numbers.merges.length === 0 ? null : (
        <Section title="Parts merged" id="merged">
          <Merges merges={numbers.merges} mayWrite={mayWrite && everySite} />
        </Section>
      )}
      {numbers.said.length === 0 ? null : (
        <Section title="What people said of numbers">
          <SaidNumbers said={numbers.said} mayWrite={mayWrite} />
        </Section>
      )}
    </>
  );
}
