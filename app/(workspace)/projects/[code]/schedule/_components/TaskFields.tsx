import { CheckboxField } from "@/app/_ui/field/CheckboxField";
import { NumberField } from "@/app/_ui/field/NumberField";
import { SelectField } from "@/app/_ui/field/SelectField";
import { TextField } from "@/app/_ui/field/TextField";
import { linkWords, readLinks, type ScheduleFile, type ScheduleTask } from "@/lib/view/schedule";

interface TaskFieldsProps {
  readonly file: ScheduleFile;
  /** Null is a new one. */
  readonly task: ScheduleTask | null;
  readonly errorOf: (name: string) => string | undefined;
}

/** What a task is, as fields of a form. */
export function TaskFields({ file, task, errorOf }: TaskFieldsProps) {
  const milestones = file.milestones.map(({ id, name }) => ({ value: id, label: name }));
  return (
    <>
      <div className="grid gap-4 sm:grid-cols-[8rem_1fr]">
        <TextField
          name="code"
          label="Code"
          required
          maxLength={12}
          defaultValue={task?.code}
          error={errorOf("code")}
        />
        <TextField
          name="name"
          label="What is done"
          required
          maxLength={200}
          defaultValue={task?.name}
          error={errorOf("name")}
        />
      </div>
      <TextField
        name="after"
        label="After"
        hint="Codes of the tasks it waits for, with working days to wait, such as W1, B2 + 3"
        defaultValue={task ? linkWords(task, file.tasks) : ""}
        error={errorOf("after")}
      />
      <div className="grid gap-4 sm:grid-cols-3">
        <TextField
          name="who"
          label="Who"
          hint="Function or firm"
          maxLength={80}
          defaultValue={task?.who}
          error={errorOf("who")}
        />
        <NumberField
          name="crews"
          label="Crews at work"
          min={0}
          step={1}
          defaultValue={task?.crews ?? ""}
          error={errorOf("crews")}
        />
        <NumberField
          name="engineers"
          label="Engineers of the site"
          min={0}
          step={0.5}
          defaultValue={task?.engineers ?? ""}
          error={errorOf("engineers")}
        />
      </div>
      <SelectField
        name="milestoneId"
        label="Milestone it serves"
        empty="None"
        choices={milestones}
        defaultValue={task?.milestoneId ?? ""}
        error={errorOf("milestoneId")}
      />
      <CheckboxField name="inWindow" label="Needs a shutdown" defaultChecked={task?.inWindow ?? false} />
    </>
  );
}

/** What was typed of a task; links that cannot be read are told under their field. */
export function typedTask(text: (name: string) => string, tasks: readonly ScheduleTask[]) {
  const links = readLinks(text("after"), tasks);
  if (!links.ok)
    return {
      ok: false,
      error: { code: "invalid", reason: links.error, fields: { after: links.error } },
    } as const;
  const number = (name: string) => (text(name) === "" ? null : Number(text(name)));
  return {
    ok: true,
    value: {
      ...{ code: text("code"), name: text("name"), who: text("who"), inWindow: text("inWindow") === "on" },
      ...{ crews: number("crews"), engineers: number("engineers") },
      milestoneId: text("milestoneId") === "" ? null : text("milestoneId"),
      after: links.value.map((link) => ({ ...link })),
    },
  } as const;
}
