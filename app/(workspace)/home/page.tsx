import { EmptyState } from "@/app/_ui/EmptyState";
import { LinkButton } from "@/app/_ui/LinkButton";
import { PageHeader } from "@/app/_ui/PageHeader";
import { Section } from "@/app/_ui/Section";
import { titled } from "@/app/_ui/titled";
import { AmountsHidden } from "@/app/(workspace)/_components/AmountsHidden";
import { Decisions } from "@/app/(workspace)/home/_components/Decisions";
import { HomeProjects } from "@/app/(workspace)/home/_components/HomeProjects";
import { WorstLines } from "@/app/(workspace)/home/_components/WorstLines";
import { signedInActor } from "@/lib/access/actor";
import { lookingBack } from "@/lib/access/lookingBack";
import { mayAt, seesAmounts } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { readReport } from "@/lib/data/report";
import { moneySpan } from "@/lib/view/format";
import { homeOf } from "@/lib/view/home";

export const generateMetadata = titled("Today");

interface HomePageProps {
  readonly searchParams: Promise<{ readonly asOf?: string }>;
}

async function TodayPage({ searchParams }: HomePageProps) {
  const actor = await signedInActor({ amounts: "hidden" });
  const asOf = await readAsOf(actor, (await searchParams).asOf);
  const input = await readReport(actor, { asOf, siteCode: null });
  if (!input)
    return (
      <>
        <PageHeader title="Today" asOf={asOf} />
        <EmptyState
          title="Nothing is known yet"
          actions={<LinkButton href="/lines">To the lines</LinkButton>}
        >
          The lines that lose most, decisions and projects stand here as soon as registers are loaded.
        </EmptyState>
      </>
    );
  const { loss, lines, decisions, projects } = homeOf(input, (siteId) =>
    mayAt(actor.grants, "money:read", siteId),
  );
  return (
    <>
      <PageHeader
        title="Today"
        asOf={asOf}
        lead={`${loss === null ? "" : `Expected stop loss a year: ${moneySpan(loss)}. `}Estimates from sparse records; they never justify running an unsafe machine.`}
      />
      {seesAmounts(actor.grants) ? null : <AmountsHidden />}
      <Section
        title={loss === null ? "The five lines of the highest score" : "The five lines that lose most"}
      >
        <WorstLines lines={lines} />
      </Section>
      <Section title="Decisions asked for">
        <Decisions decisions={decisions} />
      </Section>
      <Section title="Projects">
        <HomeProjects projects={projects} />
      </Section>
    </>
  );
}

export default lookingBack(TodayPage);
