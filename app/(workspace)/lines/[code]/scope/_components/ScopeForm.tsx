import Form from "next/form";
import { Button } from "@/app/_ui/Button";
import { SelectField } from "@/app/_ui/field/SelectField";
import type { ScopeView } from "@/lib/view/lineScope";
import { dayRange } from "@/lib/view/time";

interface ScopeFormProps {
  readonly code: string;
  readonly asOf: string;
  readonly view: ScopeView;
}

/** Chooses the family to convert to and the window to hold the work against; both stand in the address. */
export function ScopeForm({ code, asOf, view }: ScopeFormProps) {
  const { targets, target, windows, window } = view;
  if (targets.length === 0) return null;
  return (
    <Form
      action={`/lines/${encodeURIComponent(code)}/scope`}
      scroll={false}
      className="no-print mb-6 grid items-end gap-4 sm:grid-cols-3"
    >
      <SelectField
        key={`target-${target}`}
        name="target"
        label="Convert to"
        required
        defaultValue={target}
        choices={targets.map(({ family, axes, recorded }) => ({
          value: family,
          label: `${family}: ${recorded} of ${axes} axes have a successor on record`,
        }))}
      />
      {windows.length === 0 ? null : (
        <SelectField
          key={`window-${window?.window.id}`}
          name="window"
          label="Window"
          required
          defaultValue={window?.window.id ?? ""}
          choices={windows.map(({ window: { id, name, startsOn, endsOn } }) => ({
            value: id,
            label: `${name}, ${dayRange(startsOn, endsOn)}`,
          }))}
        />
      )}
      <input type="hidden" name="asOf" value={asOf} />
      <div>
        <Button type="submit">Work it out</Button>
      </div>
    </Form>
  );
}
