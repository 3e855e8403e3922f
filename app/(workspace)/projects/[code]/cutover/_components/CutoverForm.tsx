"use client";

import { useRouter } from "next/navigation";
import { Button } from "@/app/_ui/Button";
import { Dialog } from "@/app/_ui/Dialog";
import { orOffline } from "@/app/_ui/draft/orOffline";
import { EntryForm } from "@/app/_ui/EntryForm";
import { CheckboxField } from "@/app/_ui/field/CheckboxField";
import { DateField } from "@/app/_ui/field/DateField";
import { FieldFrame } from "@/app/_ui/field/FieldFrame";
import { TextField } from "@/app/_ui/field/TextField";
import { useSend } from "@/app/_ui/useSend";
import type { Done } from "@/app/(workspace)/_components/useDone";
import {
  addThisCutover,
  changeThisCutover,
  dropThisCutover,
} from "@/app/(workspace)/projects/[code]/cutover/actions";
import { type CutoverPlan, clockReading } from "@/lib/view/cutover";

interface CutoverFormProps {
  readonly projectId: string;
  readonly timeZone: string;
  readonly today: string;
  /** Null is a new one. */
  readonly plan: CutoverPlan | null;
  /** Says what was changed, with the way back. */
  readonly tell?: (done: Done) => void;
}

/** The times and the way back of a stored one, as they are typed. */
function saidOf(plan: CutoverPlan, timeZone: string) {
  const { name, startsAt, productionAt, restoreHours, marginHours, restoreTestedOn, restoreTestedBy } = plan;
  return {
    ...{ name, restoreTestedBy, restoreTestedOn: restoreTestedOn ?? "" },
    ...{ startsAt: clockReading(startsAt, timeZone), productionAt: clockReading(productionAt, timeZone) },
    ...{ restoreHours: restoreHours?.toString() ?? "", marginHours: marginHours?.toString() ?? "" },
  };
}

/** Plans a cutover, or changes its times and its way back. */
export function CutoverForm({ projectId, timeZone, today, plan, tell }: CutoverFormProps) {
  const router = useRouter();
  const save = (text: (name: string) => string) => {
    const said = {
      ...{ name: text("name"), startsAt: text("startsAt"), productionAt: text("productionAt") },
      ...{ restoreHours: text("restoreHours"), marginHours: text("marginHours") },
      ...{ restoreTestedOn: text("restoreTestedOn"), restoreTestedBy: text("restoreTestedBy") },
    };
    return orOffline(
      plan
        ? changeThisCutover({ cutoverId: plan.id, version: plan.version, ...said })
        : addThisCutover({ projectId, usual: text("usual") === "on", ...said }),
    );
  };
  return (
    <Dialog trigger={plan ? "Times and way back" : "Plan a cutover"} title={plan?.name ?? "A cutover"} wide>
      {(close) => (
        <>
          <EntryForm
            submit="Keep it"
            save={save}
            onSaved={(mark) => {
              close();
              if (!plan) return router.push(`?plan=${mark.cutoverId}`);
              const undo = () => changeThisCutover({ ...mark, ...saidOf(plan, timeZone) });
              tell?.({ message: "Times and way back are written down.", undo });
            }}
          >
            {(errorOf) => (
              <>
                <CutoverFields {...{ errorOf, plan, timeZone, today }} />
                {plan ? null : (
                  <CheckboxField name="usual" label="Begin with the usual steps" defaultChecked />
                )}
              </>
            )}
          </EntryForm>
          {plan ? <Drop plan={plan} close={close} /> : null}
        </>
      )}
    </Dialog>
  );
}

interface FieldsProps extends Omit<CutoverFormProps, "projectId" | "tell"> {
  readonly errorOf: (name: string) => string | undefined;
}

function CutoverFields({ errorOf, plan, timeZone, today }: FieldsProps) {
  const said = plan ? saidOf(plan, timeZone) : null;
  const morning = `${today}T06:00`;
  return (
    <div className="grid gap-4 sm:grid-cols-2">
      <div className="sm:col-span-2">
        <TextField
          name="name"
          label="What people call it"
          required
          defaultValue={said?.name ?? ""}
          error={errorOf("name")}
        />
      </div>
      <ClockField
        name="startsAt"
        label={`Starts, clock of ${timeZone}`}
        value={said?.startsAt ?? morning}
        error={errorOf("startsAt")}
      />
      <ClockField
        name="productionAt"
        label="Production must start"
        value={said?.productionAt ?? morning}
        error={errorOf("productionAt")}
      />
      <TextField
        name="restoreHours"
        label="Hours to put the old system back"
        defaultValue={said?.restoreHours ?? ""}
        error={errorOf("restoreHours")}
      />
      <TextField
        name="marginHours"
        label="Margin, hours"
        defaultValue={said?.marginHours ?? ""}
        error={errorOf("marginHours")}
      />
      <DateField
        name="restoreTestedOn"
        label="Putting back was tried on"
        hint="Empty: never; then there is no fall-back"
        defaultValue={said?.restoreTestedOn ?? ""}
        error={errorOf("restoreTestedOn")}
      />
      <TextField
        name="restoreTestedBy"
        label="Tried by, as a function"
        defaultValue={said?.restoreTestedBy ?? ""}
        error={errorOf("restoreTestedBy")}
      />
    </div>
  );
}

interface ClockFieldProps {
  readonly name: string;
  readonly label: string;
  readonly value: string;
  readonly error: string | undefined;
}

function ClockField({ name, label, value, error }: ClockFieldProps) {
  return (
    <FieldFrame id={name} label={label} error={error} required>
      <input
        id={name}
        name={name}
        type="datetime-local"
        defaultValue={value}
        className="input max-w-64"
        aria-describedby={error ? `${name}-error` : undefined}
        aria-invalid={error ? true : undefined}
      />
    </FieldFrame>
  );
}

function Drop({ plan, close }: { readonly plan: CutoverPlan; readonly close: () => void }) {
  const router = useRouter();
  const { pending, reason, send } = useSend<null>({
    save: () => orOffline(dropThisCutover({ cutoverId: plan.id, version: plan.version })),
    onSaved: () => {
      close();
      router.push("?");
    },
  });
  return (
    <form onSubmit={send} className="mt-3">
      <Button kind="danger" type="submit" aria-disabled={pending}>
        Remove this cutover and its {plan.steps.length} steps
      </Button>
      {reason ? <p className="mt-2 font-medium">{reason}</p> : null}
    </form>
  );
}
