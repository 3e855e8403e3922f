import { PageHeader } from "@/app/_ui/PageHeader";
import { Section } from "@/app/_ui/Section";
import { titled } from "@/app/_ui/titled";
import { PastGroundNote } from "@/app/(workspace)/_components/PastGroundNote";
import { Agreement } from "@/app/(workspace)/lines/_components/Agreement";
import { Certainty } from "@/app/(workspace)/lines/_components/Certainty";
import { NoLines } from "@/app/(workspace)/lines/_components/NoLines";
import { RankingLegend } from "@/app/(workspace)/lines/_components/RankingLegend";
import { RankingTable } from "@/app/(workspace)/lines/_components/RankingTable";
import { signedInActor } from "@/lib/access/actor";
import { lookingBack } from "@/lib/access/lookingBack";
import { maySomewhere, seesAmounts } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { readPastGround } from "@/lib/data/pastGround";
import { readRanking } from "@/lib/data/ranking";
import { money } from "@/lib/view/format";
import { concentrationSentence, lineConcentration } from "@/lib/view/lineConcentration";
import { isWholeGroup, type Ranking } from "@/lib/view/lineRanking";
import { packRanking } from "@/lib/view/rankingRows";

export const generateMetadata = titled("Lines");

interface LinesPageProps {
  readonly searchParams: Promise<{ readonly asOf?: string }>;
}

async function LinesPage({ searchParams }: LinesPageProps) {
  const actor = await signedInActor({ amounts: "hidden" });
  const asOf = await readAsOf(actor, (await searchParams).asOf);
  const ranking = await readRanking(actor, asOf);
  const ground = await readPastGround(actor, asOf);
  if (ranking.lines.length === 0)
    return (
      <>
        <PageHeader title="Lines" asOf={asOf} />
        <NoLines groupLines={ranking.groupLines} mayImport={maySomewhere(actor.grants, "register:import")} />
      </>
    );
  return (
    <>
      <PageHeader
        title="Lines by what a stop costs"
        lead={seesAmounts(actor.grants) ? leadOf(ranking) : NO_AMOUNTS}
        asOf={asOf}
      />
      <PastGroundNote {...{ ground, asOf, engine: ranking.engine }} />
      <RankingTable packed={packRanking(ranking)} />
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

export default lookingBack(LinesPage, { snapshots: true });

const NO_AMOUNTS = "Where amounts are not shown to you, lines stand by their score, stops and dates.";

function leadOf(ranking: Ranking): string {
  const found = lineConcentration(ranking.lines);
  if (found === null) return "No line has a cost per hour yet, so no loss can be given in money.";
  return concentrationSentence(found, {
    whose: isWholeGroup(ranking) ? "the group's" : "your lines'",
    money,
  });
}
