import { AsOfLink } from "@/app/_ui/AsOfLink";
import { LinkButton } from "@/app/_ui/LinkButton";
import { PageHeader } from "@/app/_ui/PageHeader";
import { Section } from "@/app/_ui/Section";
import { titled } from "@/app/_ui/titled";
import { ExampleFiles } from "@/app/(workspace)/start/_components/ExampleFiles";
import { PutAway } from "@/app/(workspace)/start/_components/PutAway";
import { StepList } from "@/app/(workspace)/start/_components/StepList";
import { signedInActor } from "@/lib/access/actor";
import { maySomewhere } from "@/lib/access/policy";
import { readFirstHoldings } from "@/lib/data/firstSteps";
import { canRank, firstSteps } from "@/lib/view/firstSteps";

export const generateMetadata = titled("First steps");

export default async function StartPage() {
  const actor = await signedInActor({ amounts: "hidden" });
  const holdings = await readFirstHoldings(actor);
  const steps = firstSteps(holdings);
  const done = steps.filter(({ isDone }) => isDone).length;
  const mayLoad = maySomewhere(actor.grants, "register:import");
  const ready = canRank(holdings);
  return (
    <>
      <PageHeader
        title="First steps"
        lead={`From an empty installation to a first ranking of lines, in this order. ${done} of ${steps.length} steps are done.`}
        actions={
          <>
            {ready ? (
              <LinkButton href="/lines" kind="primary">
                See the ranking
              </LinkButton>
            ) : null}
            <PutAway />
          </>
        }
      />
      <StepList steps={steps} mayLoad={mayLoad} />
      {mayLoad && holdings.lines === 0 ? (
        <Section
          title="Try it with invented files first"
          id="examples"
          lead="The files of the demonstration company show what a register looks like. Load them, look at the ranking, and take each file back afterwards: nothing of them stays in the figures."
        >
          <ExampleFiles />
        </Section>
      ) : null}
      <p className="measure mt-6">
        Every page has its own help: press <kbd>?</kbd> or choose Help in its head. What each register holds,
        column by column, stands under <AsOfLink href="/import#registers">Import</AsOfLink>.
      </p>
    </>
  );
}
