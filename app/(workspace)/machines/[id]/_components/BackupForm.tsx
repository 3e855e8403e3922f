import { EntryForm } from "@/app/_ui/EntryForm";
import { DateField } from "@/app/_ui/field/DateField";
import { SelectField } from "@/app/_ui/field/SelectField";
import { TextareaField } from "@/app/_ui/field/TextareaField";
import { addCopy } from "@/app/(workspace)/machines/[id]/actions";
import { backupKindName, backupKinds } from "@/lib/view/nightCard";

const KINDS = backupKinds.map((value) => ({ value, label: backupKindName(value) }));
const SOURCES = [
  { value: "yes", label: "yes, it can be edited" },
  { value: "no", label: "no, the copy can only be loaded" },
] as const;
const HAS_SOURCE: Readonly<Record<string, boolean>> = { yes: true, no: false };

interface BackupFormProps {
  readonly machineId: string;
  readonly onSaved: (id: string) => void;
}

/** What is said of a copy, as a form. */
export function BackupForm({ machineId, onSaved }: BackupFormProps) {
  return (
    <EntryForm
      submit="Save the copy"
      save={(text) =>
        addCopy({
          machineId,
          kind: backupKinds.find((kind) => kind === text("kind")) ?? "program",
          takenOn: text("takenOn"),
          keptAt: text("keptAt"),
          verifiedOn: text("verifiedOn") || null,
          sourceAvailable: HAS_SOURCE[text("source")] ?? null,
        })
      }
      onSaved={({ id }) => onSaved(id)}
    >
      {(errorOf) => (
        <>
          <SelectField name="kind" label="What was copied" required choices={KINDS} error={errorOf("kind")} />
          <DateField name="takenOn" label="Taken on" required error={errorOf("takenOn")} />
          <TextareaField
            name="keptAt"
            label="Where it lies"
            hint="Folder, shelf or medium. Never a password."
            required
            rows={2}
            maxLength={200}
            error={errorOf("keptAt")}
          />
          <DateField
            name="verifiedOn"
            label="Put back and ran on"
            hint="Leave empty when it was never tried."
            error={errorOf("verifiedOn")}
          />
          <SelectField
            name="source"
            label="Source available"
            empty="not known"
            choices={SOURCES}
            error={errorOf("sourceAvailable")}
          />
        </>
      )}
    </EntryForm>
  );
}
