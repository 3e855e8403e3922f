"use client";

import type { FormEvent } from "react";
import { Button } from "@/app/_ui/Button";
import { Dialog } from "@/app/_ui/Dialog";
import { FormMessage } from "@/app/_ui/FormMessage";
import { DateField } from "@/app/_ui/field/DateField";
import { SelectField } from "@/app/_ui/field/SelectField";
import { TextareaField } from "@/app/_ui/field/TextareaField";
import { TextField } from "@/app/_ui/field/TextField";
import { Section } from "@/app/_ui/Section";
import { SubmitButton } from "@/app/_ui/SubmitButton";
import { ChangeDone } from "@/app/(workspace)/projects/[code]/_components/ChangeDone";
import { useProjectChange } from "@/app/(workspace)/projects/[code]/_components/useProjectChange";
import { changeThisProject, removeThisProject } from "@/app/(workspace)/projects/actions";
import { type ProjectFile, type ProjectStatus, projectStatuses } from "@/lib/view/project";

/** State, dates, forecast and cause of the project; a start nobody booked on can be taken back. */
export function ProjectSettings({ project }: { readonly project: ProjectFile }) {
  const change = useProjectChange();
  const { id: projectId, version, status, forecast, cause, startsOn, endsOn } = project;
  const before = { status, forecast, cause, startsOn, endsOn };
  const send = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const data = new FormData(event.currentTarget);
    const text = (name: string) => String(data.get(name) ?? "").trim() || null;
    change.run({
      run: () =>
        changeThisProject({
          ...{ projectId, version, forecast: text("forecast"), cause: text("cause") },
          status: (text("status") ?? status) as ProjectStatus,
          ...{ startsOn: text("startsOn"), endsOn: text("endsOn") },
        }),
      done: "The project was changed.",
      undo: () => changeThisProject({ projectId, version: version + 1, ...before }),
    });
  };
  const fields = change.refusal?.fields;
  const empty = project.costs.length === 0 && project.milestones.every(({ doneOn }) => doneOn === null);
  return (
    <Section title="State, dates and forecast">
      <form key={version} onSubmit={send} noValidate className="no-print grid gap-4 sm:grid-cols-3">
        <SelectField name="status" label="State" required choices={projectStatuses} defaultValue={status} />
        <DateField name="startsOn" label="Start" defaultValue={startsOn ?? ""} error={fields?.startsOn} />
        <DateField name="endsOn" label="Planned end" defaultValue={endsOn ?? ""} error={fields?.endsOn} />
        <TextField
          name="forecast"
          label={`Lead's forecast of the whole cost (${project.currency})`}
          defaultValue={forecast ?? ""}
          error={fields?.forecast}
        />
        <div className="sm:col-span-2">
          <TextareaField
            name="cause"
            label="Why it stands so"
            rows={2}
            maxLength={400}
            defaultValue={cause ?? ""}
            error={fields?.cause}
          />
        </div>
        <div className="flex flex-wrap gap-2 sm:col-span-3">
          <SubmitButton kind="plain" pending={change.pending}>
            Save
          </SubmitButton>
          {empty ? (
            <Dialog
              trigger="Take the start back"
              kind="quiet"
              title={`Take the start of ${project.code} back?`}
            >
              {(close) => (
                <>
                  <p>Nothing is booked yet. The project goes away; the plan's line can start another.</p>
                  <div className="mt-4 flex gap-2">
                    <Button
                      kind="danger"
                      aria-disabled={change.pending}
                      onClick={() => {
                        change.run({
                          run: () => removeThisProject({ projectId, version }),
                          done: "",
                          goTo: "/projects",
                        });
                        close();
                      }}
                    >
                      Take it back
                    </Button>
                    <Button onClick={close}>Keep it</Button>
                  </div>
                </>
              )}
            </Dialog>
          ) : null}
        </div>
      </form>
      <FormMessage kind="problem">{change.refusal?.reason}</FormMessage>
      <ChangeDone change={change} />
    </Section>
  );
}
