import { DateField } from "@/app/_ui/field/DateField";
import { SelectField } from "@/app/_ui/field/SelectField";
import type { ProjectName } from "@/lib/data/projectNames";
import { lackOf, type RoleEntry } from "@/lib/view/roleEntry";

interface RoleProjectProps {
  readonly projects: readonly ProjectName[];
  readonly entry: RoleEntry;
  readonly name: string;
  readonly checked: boolean;
  readonly onChange: (entry: RoleEntry) => void;
}

/** In which project a contractor works, and until when. */
export function RoleProject({ projects, entry, name, checked, onChange }: RoleProjectProps) {
  const lack = checked ? lackOf(entry) : null;
  const choices = projects.map(({ id, code, name }) => ({ value: id, label: `${code} ${name}` }));
  return (
    <>
      <SelectField
        label="Project"
        name={name}
        required
        choices={[{ value: "", label: "Choose a project" }, ...choices]}
        hint="Only this project is seen: its schedule, axes, cutover and open points, and nothing else."
        value={entry.projectId}
        error={entry.projectId === "" ? (lack ?? undefined) : undefined}
        onChange={(event) => onChange({ ...entry, projectId: event.target.value })}
      />
      <DateField
        label="Until"
        name={`${name}-until`}
        required
        hint="The last day, to its end in UTC. After it the project is closed to this person by itself."
        value={entry.endsOn}
        error={entry.projectId === "" ? undefined : (lack ?? undefined)}
        onChange={(event) => onChange({ ...entry, endsOn: event.target.value })}
      />
    </>
  );
}
