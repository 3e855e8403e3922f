import { type MachineDossier, type MachinePosition, placesByPanel } from "@/lib/view/machine";

/** Every place of the machine with part, revision and serial number, by the panel it stands in. */
export function CardPlaces({ machine }: { readonly machine: MachineDossier }) {
  const groups = placesByPanel(machine);
  return groups.map(({ panel, places }) => (
    <div key={panel?.id ?? "none"}>
      {machine.panels.length === 0 ? null : (
        <h3>{panel === null ? "In no panel known, or at the machine itself" : panelTitle(panel)}</h3>
      )}
      <ul className="card-places">
        {places.map((place) => (
          <li key={place.id}>
            <strong>{place.designation}</strong> {wordsOf(place)}
          </li>
        ))}
      </ul>
    </div>
  ));
}

function panelTitle({ designation, name, location }: MachineDossier["panels"][number]): string {
  const named = name === null ? designation : `${designation} ${name}`;
  return location === null ? named : `${named}: ${location}`;
}

function wordsOf({ part, unit }: MachinePosition): string {
  if (part === null) return "not identified";
  if (unit === null) return `${part.number}, no unit on record`;
  return `${part.number}${unit.revision === null ? "" : ` ${unit.revision}`}, ${unit.serial}`;
}
