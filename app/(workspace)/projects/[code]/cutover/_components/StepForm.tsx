"use client";

import { Button } from "@/app/_ui/Button";
import { Dialog } from "@/app/_ui/Dialog";
import { orOffline } from "@/app/_ui/draft/orOffline";
import { EntryForm } from "@/app/_ui/EntryForm";
import { SelectField } from "@/app/_ui/field/SelectField";
import { TextField } from "@/app/_ui/field/TextField";
import type { Done } from "@/app/(workspace)/_components/useDone";
import { addThisStep, changeThisStep, dropThisStep } from "@/app/(workspace)/projects/[code]/cutover/actions";
import { CUTOVER_CAUTIONS, isCutoverCaution } from "@/lib/projects/cutoverCautions";
import type { CutoverCaution } from "@/lib/schema/cutover";
import type { CutoverPlan, CutoverStepRow } from "@/lib/view/cutover";

interface StepFormProps {
  readonly plan: CutoverPlan;
  /** Null is a new one. */
  readonly step: CutoverStepRow | null;
  readonly trigger: string;
  readonly tell: (done: Done) => void;
}

const CAUTIONS = Object.entries(CUTOVER_CAUTIONS).map(([value, { title }]) => ({ value, label: title }));

function saidOf({ title, afterHours, hours, who, phone, needs, caution }: CutoverStepRow) {
  return {
    ...{ title, who, phone, needs, afterHours: String(afterHours), hours: String(hours) },
    caution: isCutoverCaution(caution) ? caution : ("" as const),
  };
}

/** Adds a step, or changes what is planned of one. */
export function StepForm({ plan, step, trigger, tell }: StepFormProps) {
  const save = (text: (name: string) => string) => {
    const said = {
      ...{ title: text("title"), afterHours: text("afterHours"), hours: text("hours") },
      ...{
        who: text("who"),
        phone: text("phone"),
        needs: text("needs"),
        caution: text("caution") as CutoverCaution | "",
      },
    };
    return orOffline(
      step
        ? changeThisStep({ stepId: step.id, version: step.version, ...said })
        : addThisStep({ cutoverId: plan.id, ...said }),
    );
  };
  return (
    <Dialog trigger={trigger} title={step ? "Change the step" : "A step"} wide>
      {(close) => (
        <>
          <EntryForm
            submit="Keep it"
            save={save}
            onSaved={(mark) => {
              close();
              const undo = () => (step ? changeThisStep({ ...mark, ...saidOf(step) }) : dropThisStep(mark));
              tell({ message: "The step is written down.", undo });
            }}
          >
            {(errorOf) => <StepFields errorOf={errorOf} step={step} />}
          </EntryForm>
          {step ? <Drop {...{ plan, step, tell, close }} /> : null}
        </>
      )}
    </Dialog>
  );
}

interface FieldsProps {
  readonly errorOf: (name: string) => string | undefined;
  readonly step: CutoverStepRow | null;
}

function StepFields({ errorOf, step }: FieldsProps) {
  const said = step ? saidOf(step) : null;
  return (
    <div className="grid gap-4 sm:grid-cols-2">
      <div className="sm:col-span-2">
        <TextField
          name="title"
          label="What is done"
          required
          maxLength={160}
          defaultValue={said?.title ?? ""}
          error={errorOf("title")}
        />
      </div>
      <TextField
        name="afterHours"
        label="Begins, hours after the start"
        required
        defaultValue={said?.afterHours ?? ""}
        error={errorOf("afterHours")}
      />
      <TextField
        name="hours"
        label="Takes, hours"
        required
        defaultValue={said?.hours ?? ""}
        error={errorOf("hours")}
      />
      <TextField
        name="who"
        label="Who"
        hint="A function"
        defaultValue={said?.who ?? ""}
        error={errorOf("who")}
      />
      <TextField
        name="phone"
        label="Number to call"
        defaultValue={said?.phone ?? ""}
        error={errorOf("phone")}
      />
      <TextField
        name="needs"
        label="What it needs"
        defaultValue={said?.needs ?? ""}
        error={errorOf("needs")}
      />
      <SelectField
        name="caution"
        label="Caution shown with it"
        empty="None"
        choices={CAUTIONS}
        defaultValue={said?.caution ?? ""}
        error={errorOf("caution")}
      />
    </div>
  );
}

interface DropProps extends Pick<StepFormProps, "plan" | "tell"> {
  readonly step: CutoverStepRow;
  readonly close: () => void;
}

function Drop({ plan, step, tell, close }: DropProps) {
  const drop = async () => {
    const answer = await orOffline(dropThisStep({ stepId: step.id, version: step.version }));
    close();
    if (!answer.ok) return tell({ message: answer.error.reason });
    tell({
      message: `The step “${step.title}” was removed.`,
      undo: () => addThisStep({ cutoverId: plan.id, ...saidOf(step) }),
    });
  };
  return (
    <div className="mt-3">
      <Button kind="quiet" onClick={drop}>
        Remove the step
      </Button>
    </div>
  );
}
