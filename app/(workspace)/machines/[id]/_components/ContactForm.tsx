import { EntryForm } from "@/app/_ui/EntryForm";
import { CheckboxField } from "@/app/_ui/field/CheckboxField";
import { TextField } from "@/app/_ui/field/TextField";
import { addNumber } from "@/app/(workspace)/machines/[id]/actions";

interface ContactFormProps {
  readonly machineId: string;
  readonly onSaved: (id: string) => void;
}

/** What is said of a function to call, as a form. */
export function ContactForm({ machineId, onSaved }: ContactFormProps) {
  return (
    <EntryForm
      submit="Save the number"
      save={(text) =>
        addNumber({
          machineId,
          wholeSite: text("wholeSite") === "yes",
          role: text("role"),
          phone: text("phone"),
          hours: text("hours"),
          note: text("note") || null,
        })
      }
      onSaved={({ id }) => onSaved(id)}
    >
      {(errorOf) => (
        <>
          <TextField
            name="role"
            label="Function"
            hint="Who answers, by function. Never a person's name."
            required
            maxLength={80}
            autoComplete="off"
            error={errorOf("role")}
          />
          <TextField name="phone" label="Number" required autoComplete="off" error={errorOf("phone")} />
          <TextField
            name="hours"
            label="When somebody answers"
            required
            maxLength={80}
            autoComplete="off"
            error={errorOf("hours")}
          />
          <TextField name="note" label="Note" maxLength={200} autoComplete="off" error={errorOf("note")} />
          <CheckboxField name="wholeSite" value="yes" label="For the whole site, not only this line" />
        </>
      )}
    </EntryForm>
  );
}
