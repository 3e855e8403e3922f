import { Fold } from "@/app/_ui/Fold";
import { PlacesTable } from "@/app/(workspace)/parts/[id]/_components/PlacesTable";
import { count } from "@/lib/view/number";
import type { PartDossier } from "@/lib/view/partDossier";

/** Every place that holds the part, with line, machine, unit and revision. */
export function WhereUsed({ part }: { readonly part: PartDossier }) {
  const { places, elsewhere } = part;
  const lines = new Set(places.map((place) => place.lineCode)).size;
  const others = elsewhere === null ? "" : ` At other sites: ${count(elsewhere.installed, "unit")}.`;
  return (
    <Fold
      page="part"
      title="Where it is used"
      id="where-used"
      figure={`${count(places.length, "place")} on ${count(lines, "line")}`}
      lead={`${count(places.length, "place")} on ${count(lines, "line")}.${others}`}
    >
      {places.length === 0 ? null : <PlacesTable places={places} />}
    </Fold>
  );
}
