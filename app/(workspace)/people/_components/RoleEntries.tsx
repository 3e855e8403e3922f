import { Button } from "@/app/_ui/Button";
import { SelectField } from "@/app/_ui/field/SelectField";
import { RoleLimits } from "@/app/(workspace)/people/_components/RoleLimits";
import { RolePlaces } from "@/app/(workspace)/people/_components/RolePlaces";
import { RoleProject } from "@/app/(workspace)/people/_components/RoleProject";
import type { ProjectName } from "@/lib/data/projectNames";
import type { SiteName } from "@/lib/data/siteNames";
import { FRESH_ENTRY, type RoleEntry } from "@/lib/view/roleEntry";
import { roles } from "@/lib/view/roles";

export interface RoleEntriesProps {
  readonly sites: readonly SiteName[];
  readonly projects: readonly ProjectName[];
  readonly entries: readonly RoleEntry[];
  readonly onChange: (entries: readonly RoleEntry[]) => void;
  /** Points out the roles that name no place. */
  readonly checked: boolean;
}

const CHOICES = roles.map(({ role, name }) => ({ value: role, label: name }));

/** The roles of one person, each with the sites it holds at. */
export function RoleEntries({ sites, projects, entries, onChange, checked }: RoleEntriesProps) {
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
                // Amounts are not for people from outside unless somebody says so.
                if (role) replace(place, { ...entry, role, amounts: role !== "contractor" });
              }}
            />
            {entry.role === "contractor" ? (
              <RoleProject
                {...{ projects, entry, checked }}
                name={`project-${place}`}
                onChange={(next) => replace(place, next)}
              />
            ) : (
              <RolePlaces
                {...{ sites, entry, checked }}
                name={`places-${place}`}
                onChange={(next) => replace(place, next)}
              />
            )}
            <RoleLimits {...{ entry }} name={`limits-${place}`} onChange={(next) => replace(place, next)} />
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
