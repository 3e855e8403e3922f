import { EntryForm } from "@/app/_ui/EntryForm";
import { DateField } from "@/app/_ui/field/DateField";
import { NumberField } from "@/app/_ui/field/NumberField";
import { SelectField } from "@/app/_ui/field/SelectField";
import { TextField } from "@/app/_ui/field/TextField";
import { savePlate } from "@/app/(workspace)/machines/[id]/actions";
import type { ControllerPlate } from "@/lib/schema/plate";
import { evidenceChoices } from "@/lib/view/evidence";
import type { MachineController } from "@/lib/view/machine";

interface ControllerFormProps {
  readonly controller: MachineController;
  readonly seen: ControllerPlate;
  readonly onSaved: (wanted: ControllerPlate) => void;
}

/** Hardware, most axes and leading line of a controller, as a form. */
export function ControllerForm({ controller, seen, onSaved }: ControllerFormProps) {
  const read = (text: (name: string) => string): ControllerPlate => ({
    hardware: text("hardware") || null,
    axisLimit: text("axisLimit") === "" ? null : Number(text("axisLimit")),
    leadsLineId: text("leadsLineId") || null,
    readOn: text("readOn") || null,
    evidence: evidenceChoices.find(({ value }) => value === text("evidence"))?.value ?? seen.evidence,
  });
  return (
    <EntryForm
      submit="Save the controller"
      save={async (text) => {
        const wanted = read(text);
        const answer = await savePlate({ controllerId: controller.id, seen, wanted });
        return answer.ok ? { ok: true, value: wanted } : answer;
      }}
      onSaved={(wanted) => onSaved(wanted)}
    >
      {(errorOf) => (
        <div className="grid gap-4 sm:grid-cols-2">
          <TextField
            {...{ name: "hardware", label: "Hardware", hint: "Letter and level on its plate, as C2." }}
            defaultValue={seen.hardware ?? ""}
            autoComplete="off"
            error={errorOf("hardware")}
          />
          <NumberField
            {...{ name: "axisLimit", label: "Drives at most", unit: "axes", min: 1, step: 1 }}
            defaultValue={seen.axisLimit ?? ""}
            error={errorOf("axisLimit")}
          />
          <SelectField
            {...{ name: "leadsLineId", label: "Leading controller of", empty: "no line" }}
            choices={controller.lines.map(({ id, code }) => ({ value: id, label: code }))}
            defaultValue={seen.leadsLineId ?? ""}
            error={errorOf("leadsLineId")}
          />
          <DateField
            name="readOn"
            label="Read on"
            defaultValue={seen.readOn ?? ""}
            error={errorOf("readOn")}
          />
          <SelectField
            {...{ name: "evidence", label: "How well it is known", required: true }}
            choices={evidenceChoices}
            defaultValue={seen.evidence}
            error={errorOf("evidence")}
          />
        </div>
      )}
    </EntryForm>
  );
}
