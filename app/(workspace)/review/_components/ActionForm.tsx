"use client";

import { useDraft } from "@/app/_ui/draft/useDraft";
import { EntryForm } from "@/app/_ui/EntryForm";
import { DateField } from "@/app/_ui/field/DateField";
import { SelectField } from "@/app/_ui/field/SelectField";
import { TextareaField } from "@/app/_ui/field/TextareaField";
import type { About, Desk } from "@/app/(workspace)/review/_components/desk";
import { addAnAction, changeThisAction, removeThisAction } from "@/app/(workspace)/review/actions";
import type { ReviewAction } from "@/lib/view/reviewRecord";

interface ActionFormProps {
  readonly desk: Desk;
  readonly about: About;
  /** What is changed; absent is a new one. */
  readonly action?: ReviewAction;
  readonly onDone: () => void;
}

/** Part or line as one choice; empty is the whole site. */
const subjectOf = ({ partId, lineId }: Pick<About, "partId" | "lineId">) =>
  partId !== null ? `part/${partId}` : lineId === null ? "" : `line/${lineId}`;

function readSubject(text: string) {
  const [kind, id = ""] = text.split("/");
  return { partId: kind === "part" ? id : null, lineId: kind === "line" ? id : null };
}

/** What is to be done, by whom and until when; the text being typed is kept on the device until it is saved. */
export function ActionForm({ desk, about, action, onDone }: ActionFormProps) {
  const { site, tell } = desk;
  const name = `ebbline review action ${site.id} ${action?.id ?? (subjectOf(about) || about.text)}`;
  const draft = useDraft(name, {
    entry: { text: action?.text ?? about.text },
    version: action?.version ?? 0,
  });
  return (
    <EntryForm
      submit={action ? "Save the action" : "Add the action"}
      save={(text) => {
        const wanted = {
          text: text("text"),
          ownerId: text("ownerId"),
          dueOn: text("dueOn"),
          ...readSubject(text("subject")),
        };
        return action
          ? changeThisAction({ ...wanted, actionId: action.id, version: action.version })
          : addAnAction({ ...wanted, siteId: site.id });
      }}
      onSaved={(saved) => {
        draft.clear({ entry: { text: "" }, version: 0 });
        onDone();
        tell({
          message: action ? "Action changed." : "Action added.",
          undo: () =>
            action ? changeThisAction({ ...saidBefore(action), ...saved }) : removeThisAction(saved),
        });
      }}
    >
      {(errorOf) => (
        <>
          <TextareaField
            name="text"
            label="What is to be done"
            required
            maxLength={300}
            rows={2}
            value={draft.entry.text}
            onChange={(event) => draft.type({ text: event.target.value })}
            error={errorOf("text")}
          />
          <SelectField
            name="subject"
            label="What it is about"
            empty={`${site.code}, whole site`}
            choices={subjects(desk)}
            defaultValue={subjectOf(about)}
            error={errorOf("partId") ?? errorOf("lineId")}
          />
          <SelectField
            name="ownerId"
            label="Who does it"
            required
            choices={desk.owners.map(({ id, name: label }) => ({ value: id, label }))}
            defaultValue={action?.owner.id ?? desk.me}
            error={errorOf("ownerId")}
          />
          <DateField
            name="dueOn"
            label="Due on"
            required
            defaultValue={action?.dueOn ?? desk.dueOn}
            error={errorOf("dueOn")}
          />
        </>
      )}
    </EntryForm>
  );
}

function subjects({ lines, parts }: Desk) {
  return [
    ...lines.map(({ id, code }) => ({ value: `line/${id}`, label: `Line ${code}` })),
    ...parts.map(({ id, number, description }) => ({
      value: `part/${id}`,
      label: `${number} ${description}`,
    })),
  ];
}

function saidBefore({ text, part, line, owner, dueOn }: ReviewAction) {
  return { text, partId: part?.id ?? null, lineId: line?.id ?? null, ownerId: owner.id, dueOn };
}
