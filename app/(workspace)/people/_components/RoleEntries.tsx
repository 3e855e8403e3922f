import { Button } from "@/app/_ui/Button";
import { SelectField } from "@/app/_ui/field/SelectField";
import { RolePlaces } from "@/app/(workspace)/people/_components/RolePlaces";
import type { SiteName } from "@/lib/data/siteNames";
import type { RoleEntry } from "@/lib/view/roleEntry";
import { roles } from "@/lib/view/roles";

export interface RoleEntriesProps {
  readonly sites: readonly SiteName[];
  readonly entries: readonly RoleEntry[];
  readonly onChange: (entries: readonly RoleEntry[]) => void;
  /** Points out the roles that name no place. */
  readonly checked: boolean;
}

const CHOICES = roles.map(({ role, name }) => ({ value: role, label: name }));

/** A role nobody has to take back: reading, and nowhere yet. */
export const FRESH_ENTRY: RoleEntry = { role: "viewer", everywhere: false, siteIds: [] };

/** The roles of one person, each with the sites it holds at. */
export function RoleEntries({ sites, entries, onChange, checked }: RoleEntriesProps) {
  const replace = (place: number, next: RoleEntry) =>
    onChange(entries.map((entry, at) => (at === place ? next : entry)));
  return (
    <div className="grid gap-4">
      {entries.length === 0 ? <p>No role: this person can sign in but sees nothing.</p> : null}
      {entries.map((entry, place) => {
        const name = `Role ${place + 1}`;
        return (
          <fieldset key={name} className="grid gap-3 border border-rule-2 p-3">
            <legend className="label px-1">{name}</legend>
            <SelectField
              label="May act as"
              name={`role-${place}`}
              required
              choices={CHOICES}
              hint={roles.find(({ role }) => role === entry.role)?.sentence}
              value={entry.role}
              onChange={(event) => {
                const role = roles.find((one) => one.role === event.target.value)?.role;
                if (role) replace(place, { ...entry, role });
              }}
            />
            <RolePlaces
              {...{ sites, entry, checked }}
              name={`places-${place}`}
              onChange={(next) => replace(place, next)}
            />
            <div>
              <Button kind="quiet" onClick={() => onChange(entries.filter((_, at) => at !== place))}>
                Remove {name.toLowerCase()}
              </Button>
            </div>
          </fieldset>
        );
      })}
      <div>
        <Button onClick={() => onChange([...entries, FRESH_ENTRY])}>
          {entries.length === 0 ? "Give a role" : "Give another role"}
        </Button>
      </div>
    </div>
  );
}
