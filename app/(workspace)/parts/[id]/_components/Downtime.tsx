import { Fold } from "@/app/_ui/Fold";
import { DowntimeTable } from "@/app/(workspace)/_components/DowntimeTable";
import { restorationBelief } from "@/lib/risk/restorationTimes";
import { downtimeTable } from "@/lib/view/downtimeTable";
import { itemClassName } from "@/lib/view/linePart";
import type { PartDossier } from "@/lib/view/partDossier";
import type { PartExperience } from "@/lib/view/partExperience";
import { partFolds } from "@/lib/view/partFolds";

interface DowntimeProps {
  readonly part: PartDossier;
  readonly experience: PartExperience;
}

/** How long it stood when the part failed: waiting and work, with a spare at hand and without. */
export function Downtime({ part, experience }: DowntimeProps) {
  const { itemClass, stage, repairYield, repairTurnaroundDays, elsewhere } = part;
  const known = repairYield !== null && repairTurnaroundDays !== null;
  const repair = known ? { yield: repairYield, turnaroundYears: repairTurnaroundDays / 365.25 } : null;
  const belief = restorationBelief({ itemClass, stage, repair }, experience.assumptions);
  const rows = downtimeTable(experience.events, belief);
  return (
    <Fold
      page="part"
      title="How long it stands"
      id="downtime"
      figure={partFolds.stops(experience)}
      lead={`Stops of this part in five years${elsewhere === null ? "" : " at your sites"}, split into waiting for an item and work.`}
    >
      <DowntimeTable
        caption={`Stops of ${part.number} by whether a spare was at hand`}
        groups={[{ label: itemClassName(itemClass), rows }]}
      />
      <p className="measure mt-2 text-ink-2 text-sm">
        The loss of a line takes the stops of the whole class at all sites, pulled to the same belief: one
        part has too few. The belief without a spare follows from the sources still open to this part.
      </p>
    </Fold>
  );
}
