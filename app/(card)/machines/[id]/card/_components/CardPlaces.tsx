import { type MachineDossier, type MachinePosition, placesOf } from "@/lib/view/machine";

/** Every place of the machine with part, revision and serial number. */
export function CardPlaces({ machine }: { readonly machine: MachineDossier }) {
  return (
    <ul className="card-places">
      {placesOf(machine).map((place) => (
        <li key={place.id}>
          <strong>{place.designation}</strong> {wordsOf(place)}
        </li>
      ))}
    </ul>
  );
}

function wordsOf({ part, unit }: MachinePosition): string {
  if (part === null) return "not identified";
  if (unit === null) return `${part.number}, no unit on record`;
  return `${part.number}${unit.revision === null ? "" : ` ${unit.revision}`}, ${unit.serial}`;
}
