import { AsOfLink } from "@/app/_ui/AsOfLink";
import { EvidenceMark } from "@/app/_ui/EvidenceMark";
import { RowTable } from "@/app/_ui/RowTable";
import { WhereFrom } from "@/app/_ui/WhereFrom";
import { evidenceMark } from "@/lib/view/evidence";
import { itemClassName } from "@/lib/view/linePart";
import { type MachinePosition, type PlacedUnit, stayWords } from "@/lib/view/machine";

const HEADS = ["Place", "Panel", "Item", "Part", "Unit in the place", "Units before"];

/** The places of a machine with the unit in each and those that were in it. */
export function PlaceRows({ places }: { readonly places: readonly MachinePosition[] }) {
  if (places.length === 0) return <p>No place is recorded on this machine.</p>;
  return (
    <RowTable caption="Places and units of the machine" heads={HEADS}>
      {places.map(({ id, designation, panel, itemClass, part, evidence, unit, before }) => (
        <tr key={id} id={`place-${designation}`} className="target:bg-accent-soft">
          <th scope="row">
            {designation}
            <WhereFrom entity="Position" id={id} of={designation} />
          </th>
          <td>
            {panel === null ? (
              <span className="text-ink-2">none known</span>
            ) : (
              <a href={`#panel-${panel.designation}`}>{panel.designation}</a>
            )}
          </td>
          <td>{itemClassName(itemClass)}</td>
          <td>
            {part === null ? "not identified" : <AsOfLink href={`/parts/${part.id}`}>{part.number}</AsOfLink>}{" "}
            <EvidenceMark {...evidenceMark(evidence)} />
          </td>
          <td className="min-w-64">{unit === null ? "no unit on record" : <UnitWords unit={unit} />}</td>
          <td>
            {before.length === 0 ? "none on record" : null}
            <ul>
              {before.map((one) => (
                <li key={`${one.unitId} ${one.fromOn}`}>
                  <UnitWords unit={one} />
                </li>
              ))}
            </ul>
          </td>
        </tr>
      ))}
    </RowTable>
  );
}

function UnitWords({ unit }: { readonly unit: PlacedUnit }) {
  return (
    <>
      serial {unit.serial}, {unit.revision === null ? "revision not known" : `revision ${unit.revision}`}
      <span className="block text-ink-2 text-xs">
        {stayWords(unit)}
        {unit.madeYear === null ? "" : `, made ${unit.madeYear}`}
      </span>
      <WhereFrom entity="Unit" id={unit.unitId} of={`serial ${unit.serial}`} />
      {unit.elsewhere.map((stay) => (
        <span key={`${stay.place} ${stay.fromOn}`} className="block text-ink-2 text-xs">
          also in <AsOfLink href={`/machines/${stay.machineId}`}>{stay.place}</AsOfLink> {stayWords(stay)}
        </span>
      ))}
    </>
  );
}
