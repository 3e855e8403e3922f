import type { IsoDate } from "@/lib/kernel/isoDate";
import type { Assumptions } from "@/lib/risk/assumptions";
import type { ItemClass } from "@/lib/risk/evaluation";
import type { StorageRules } from "@/lib/spares/usableCount";

/** How pieces of a class are counted on a day, by the assumptions. */
export function storageRules(itemClass: ItemClass, asOf: IsoDate, assumptions: Assumptions): StorageRules {
  const { storage, unknownStorageWorks } = assumptions.classes[itemClass];
  const { unprovenWorks, removedUntestedWorks } = assumptions;
  return { asOf, bands: storage, unknownWorks: unknownStorageWorks, unprovenWorks, removedUntestedWorks };
}
