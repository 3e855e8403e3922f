import { Fold } from "@/app/_ui/Fold";
import { PartEventsTable } from "@/app/(workspace)/parts/[id]/_components/PartEventsTable";
import { count, plainNumber } from "@/lib/view/number";
import type { PartDossier } from "@/lib/view/partDossier";
import { countEvents } from "@/lib/view/partEvent";
import type { PartExperience } from "@/lib/view/partExperience";
import { partFolds } from "@/lib/view/partFolds";

interface PartEventsProps {
  readonly part: PartDossier;
  readonly experience: PartExperience;
}

/** The rows behind the rates: what counts, as what, and what does not and why. */
export function PartEvents({ part, experience }: PartEventsProps) {
  const { elsewhere } = experience;
  const others =
    elsewhere === null
      ? ""
      : ` At other sites: ${count(elsewhere.removals, "removal")}, ${count(elsewhere.failures, "failure")} of them, in ${plainNumber(elsewhere.unitYears)} unit-years.`;
  return (
    <Fold
      page="part"
      title="The records behind the rates"
      id="events"
      figure={partFolds.events(experience)}
      lead={`Each row of five years with what it counts as. Every failure is a removal too.${others}`}
    >
      <PartEventsTable number={part.number} events={countEvents(experience.events)} />
    </Fold>
  );
}
