import { EntryForm } from "@/app/_ui/EntryForm";
import { placePanels } from "@/app/(workspace)/machines/[id]/actions";
import type { PlaceInPanels } from "@/lib/schema/panel";
import { itemClassName } from "@/lib/view/linePart";
import type { MachinePanel, MachinePosition } from "@/lib/view/machine";

interface PlacesFormProps {
  readonly machineId: string;
  readonly panels: readonly MachinePanel[];
  readonly places: readonly MachinePosition[];
  readonly seen: PlaceInPanels["seen"];
  readonly onSaved: (wanted: PlaceInPanels["wanted"]) => void;
}

/** In which panel each place of a machine stands, as a form of one row a place. */
export function PlacesForm({ machineId, panels, places, seen, onSaved }: PlacesFormProps) {
  return (
    <EntryForm
      submit="Save the places"
      save={async (text) => {
        const wanted = places.map(({ id }) => ({ positionId: id, panelId: text(id) || null }));
        const answer = await placePanels({ machineId, seen: [...seen], wanted });
        return answer.ok ? { ok: true, value: wanted } : answer;
      }}
      onSaved={(wanted) => onSaved(wanted)}
    >
      {() => (
        <ul className="grid max-h-96 gap-x-8 overflow-y-auto sm:grid-cols-2">
          {places.map(({ id, designation, itemClass, panel }) => (
            <li key={id} className="flex items-center justify-between gap-3 border-rule border-b py-1">
              <label htmlFor={`in-${id}`}>
                {designation} <span className="text-ink-2 text-sm">{itemClassName(itemClass)}</span>
              </label>
              <select id={`in-${id}`} name={id} className="input w-auto" defaultValue={panel?.id ?? ""}>
                <option value="">none known</option>
                {panels.map((one) => (
                  <option key={one.id} value={one.id}>
                    {one.designation}
                  </option>
                ))}
              </select>
            </li>
          ))}
        </ul>
      )}
    </EntryForm>
  );
}
