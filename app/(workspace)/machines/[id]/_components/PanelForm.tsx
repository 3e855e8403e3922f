import { EntryForm } from "@/app/_ui/EntryForm";
import { TextField } from "@/app/_ui/field/TextField";
import type { Refusal } from "@/lib/access/action";
import type { Result } from "@/lib/kernel/result";
import type { PanelWords } from "@/lib/schema/panel";

interface PanelFormProps {
  /** What is changed; absent is a new panel. */
  readonly start?: PanelWords;
  readonly save: (wanted: PanelWords) => Promise<Result<{ readonly id: string }, Refusal>>;
  readonly onSaved: (saved: { readonly id: string; readonly words: PanelWords }) => void;
}

/** What a panel is called and how it is found, as a form. */
export function PanelForm({ start, save, onSaved }: PanelFormProps) {
  return (
    <EntryForm
      submit="Save the panel"
      save={async (text) => {
        const words = {
          designation: text("designation"),
          name: text("name") || null,
          location: text("location") || null,
        };
        const answer = await save(words);
        return answer.ok ? { ok: true, value: { id: answer.value.id, words } } : answer;
      }}
      onSaved={(saved) => onSaved(saved)}
    >
      {(errorOf) => (
        <>
          <TextField
            {...{ name: "designation", label: "Designation", hint: "As on its door, after IEC 81346: +A1." }}
            required
            maxLength={40}
            autoComplete="off"
            defaultValue={start?.designation ?? ""}
            error={errorOf("designation")}
          />
          <TextField
            {...{ name: "name", label: "Name", maxLength: 80, autoComplete: "off" }}
            defaultValue={start?.name ?? ""}
            error={errorOf("name")}
          />
          <TextField
            {...{ name: "location", label: "How to find it", maxLength: 160, autoComplete: "off" }}
            hint="For somebody who has never been there."
            defaultValue={start?.location ?? ""}
            error={errorOf("location")}
          />
        </>
      )}
    </EntryForm>
  );
}
