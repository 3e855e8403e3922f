import { addDays } from "@/lib/kernel/isoDate";
import { type RandomStream, randomStream } from "@/lib/kernel/random";
import type { PlannedController } from "@/seed/scenarios/showcase/controllers";
import { D0 } from "@/seed/scenarios/showcase/moment";
import type { SiteCode } from "@/seed/scenarios/showcase/sites";
import { seedId } from "@/seed/seedId";
import type { BackupRow } from "@/seed/siteTables";

/** Share of the controllers of a site with any copy on record; Thornby Vale is the best kept, San Tadeo the least. */
const KEPT_SHARE: Readonly<Record<SiteCode, number>> = {
  VEL: 0.9,
  OST: 0.8,
  KAR: 0.9,
  PIN: 0.85,
  TAD: 0.45,
  THO: 1,
};

/** The line with one machine whose program nobody can edit any more. */
const WITHOUT_SOURCE = "PIN-03";

const KINDS = ["program", "parameters", "operator_panel"] as const;

const PLACES: Readonly<Record<(typeof KINDS)[number], string>> = {
  program: "site archive, folder programs",
  parameters: "site archive, folder drives",
  operator_panel: "memory card in the cabinet door",
};

/** Copies kept of the controllers' programs, drive parameters and operator panels, most never put back to try them. */
export function backupRows(seed: number, controllers: readonly PlannedController[]): BackupRow[] {
  const chance = randomStream(seed, "backup");
  const sourceless = controllers.find(
    ({ machines }) => machines.length === 1 && machines[0]?.line.code === WITHOUT_SOURCE,
  );
  return controllers.flatMap((one) => copiesOf(one, chance, one === sourceless));
}

function copiesOf(one: PlannedController, chance: RandomStream, sourceless: boolean): BackupRow[] {
  const { row, machines } = one;
  const line = machines[0]?.line;
  if (!line) return [];
  const kept = chance.next() < KEPT_SHARE[line.site as SiteCode];
  if (!kept && !sourceless) return [];
  return KINDS.flatMap((kind) => {
    if (kind !== "program" && chance.next() < 0.35) return [];
    const takenOn = addDays(D0, -chance.integer(15, line.site === "THO" ? 200 : 1400));
    const tried = chance.next() < (line.site === "THO" ? 0.8 : 0.2);
    return [
      {
        id: seedId("Backup", `${row.designation}/${kind}`),
        controllerId: row.id,
        kind,
        takenOn,
        keptAt: `${line.site} ${PLACES[kind]}, ${row.designation}`,
        verifiedOn: tried ? addDays(takenOn, chance.integer(0, 14)) : null,
        sourceAvailable: kind === "program" ? !sourceless : null,
      },
    ];
  });
}
