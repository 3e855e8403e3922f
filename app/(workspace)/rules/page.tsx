import { notFound } from "next/navigation";
import { PageHeader } from "@/app/_ui/PageHeader";
import { Section } from "@/app/_ui/Section";
import { titled } from "@/app/_ui/titled";
import { RuleHistory } from "@/app/(workspace)/rules/_components/RuleHistory";
import { RuleList } from "@/app/(workspace)/rules/_components/RuleList";
import { StandingFigures } from "@/app/(workspace)/rules/_components/StandingFigures";
import { StandingTable } from "@/app/(workspace)/rules/_components/StandingTable";
import { signedInActor } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { readStandings } from "@/lib/data/lineCompatibility";
import { readRuleOverview } from "@/lib/data/rules";
import { count } from "@/lib/view/number";
import { standingCounts, standingRows } from "@/lib/view/standing";

export const generateMetadata = titled("Compatibility rules");

interface RulesPageProps {
  readonly searchParams: Promise<{ readonly asOf?: string }>;
}

export default async function RulesPage({ searchParams }: RulesPageProps) {
  const actor = await signedInActor({ amounts: "hidden" });
  const asOf = await readAsOf(actor, (await searchParams).asOf);
  const [overview, lines] = await Promise.all([readRuleOverview(actor), readStandings(actor, { asOf })]);
  if (overview === null) notFound();
  const { rules, versions, mayChange } = overview;
  const rows = standingRows(lines);
  return (
    <>
      <PageHeader
        title="Compatibility rules"
        lead={`${count(rules.filter(({ retired }) => !retired).length, "rule")} in force ${rules.length === 0 ? "yet: without one, no controller is held against anything" : "say what stands between the controllers as read and the new drives"}.`}
        asOf={asOf}
      />
      <Section
        title="Where the lines stand"
        lead="Each line counts where its leading controller stands; the list says where another controller of the line stands worse. Judged now from the records, stored nowhere."
      >
        <StandingFigures counts={standingCounts(rows)} lines={rows.length} />
        <StandingTable rows={rows} />
      </Section>
      <Section
        title="Rules"
        lead="The newest version of a rule is in force at once, for all sites. Before it is written, the form says which lines it changes."
      >
        <RuleList rules={rules} mayChange={mayChange} />
      </Section>
      <Section title="Versions" lead="A version stays as it was written; any of them can be taken up again.">
        <RuleHistory versions={versions} rules={rules} mayChange={mayChange} />
      </Section>
    </>
  );
}
