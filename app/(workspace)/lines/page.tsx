import type { Metadata } from "next";
import { PageHeader } from "@/app/_ui/PageHeader";
import { Section } from "@/app/_ui/Section";
import { Agreement } from "@/app/(workspace)/lines/_components/Agreement";
import { Certainty } from "@/app/(workspace)/lines/_components/Certainty";
import { NoLines } from "@/app/(workspace)/lines/_components/NoLines";
import { RankingLegend } from "@/app/(workspace)/lines/_components/RankingLegend";
import { RankingTable } from "@/app/(workspace)/lines/_components/RankingTable";
import { signedInActor } from "@/lib/access/actor";
import { maySomewhere } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { readRanking } from "@/lib/data/ranking";
import { money } from "@/lib/view/format";
import { concentrationSentence, lineConcentration } from "@/lib/view/lineConcentration";
import { isWholeGroup, type Ranking } from "@/lib/view/lineRanking";

export const metadata: Metadata = { title: "Lines" };

interface LinesPageProps {
  readonly searchParams: Promise<{ readonly asOf?: string }>;
}

export default async function LinesPage({ searchParams }: LinesPageProps) {
  const actor = await signedInActor();
  const asOf = await readAsOf(actor, (await searchParams).asOf);
  const ranking = await readRanking(actor, asOf);
  if (ranking.lines.length === 0)
    return (
      <>
        <PageHeader title="Lines" asOf={asOf} />
        <NoLines groupLines={ranking.groupLines} mayImport={maySomewhere(actor.grants, "register:import")} />
      </>
    );
  return (
    <>
      <PageHeader title="Lines by what a stop costs" lead={leadOf(ranking)} asOf={asOf} />
      <RankingTable ranking={ranking} />
      <RankingLegend />
      <Section title="How sure is the order?">
        <Certainty ranking={ranking} />
      </Section>
      <Section title="Do money and score agree?">
        <Agreement ranking={ranking} />
      </Section>
    </>
  );
}

function leadOf(ranking: Ranking): string {
  const found = lineConcentration(ranking.lines);
  if (found === null) return "No line has a cost per hour yet, so no loss can be given in money.";
  return concentrationSentence(found, {
    whose: isWholeGroup(ranking) ? "the group's" : "your lines'",
    money,
  });
}
