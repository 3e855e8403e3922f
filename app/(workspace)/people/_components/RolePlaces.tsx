import { useId } from "react";
import { CheckboxField } from "@/app/_ui/field/CheckboxField";
import type { SiteName } from "@/lib/data/siteNames";
import { lackOf, type RoleEntry } from "@/lib/view/roleEntry";

interface RolePlacesProps {
  readonly sites: readonly SiteName[];
  readonly entry: RoleEntry;
  readonly name: string;
  readonly checked: boolean;
  readonly onChange: (entry: RoleEntry) => void;
}

/** Where a role holds: at all sites or at those ticked. */
export function RolePlaces({ sites, entry, name, checked, onChange }: RolePlacesProps) {
  const problem = useId();
  const lack = checked ? lackOf(entry) : null;
  const tick = (id: string, on: boolean) => {
    const others = entry.siteIds.filter((one) => one !== id);
    onChange({ ...entry, siteIds: on ? [...others, id] : others });
  };
  return (
    <fieldset aria-describedby={lack ? problem : undefined}>
      <legend className="font-semibold text-[0.9375rem]">Where</legend>
      <CheckboxField
        label="All sites, those to come included"
        name={`${name}-all`}
        checked={entry.everywhere}
        onChange={(event) => onChange({ ...entry, everywhere: event.target.checked })}
      />
      {entry.everywhere ? null : (
        <div className="grid gap-x-6 sm:grid-cols-2">
          {sites.map((site) => (
            <CheckboxField
              key={site.id}
              label={`${site.code} ${site.name}`}
              name={`${name}-${site.code}`}
              checked={entry.siteIds.includes(site.id)}
              onChange={(event) => tick(site.id, event.target.checked)}
            />
          ))}
        </div>
      )}
      {lack ? (
        <p id={problem} className="border-worse border-l-4 pl-2 font-medium text-sm">
          {lack}
        </p>
      ) : null}
    </fieldset>
  );
}
