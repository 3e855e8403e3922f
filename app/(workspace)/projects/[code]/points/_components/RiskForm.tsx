"use client";

import { Button } from "@/app/_ui/Button";
import { Dialog } from "@/app/_ui/Dialog";
import { orOffline } from "@/app/_ui/draft/orOffline";
import { EntryForm } from "@/app/_ui/EntryForm";
import { SelectField } from "@/app/_ui/field/SelectField";
import { TextareaField } from "@/app/_ui/field/TextareaField";
import { TextField } from "@/app/_ui/field/TextField";
import type { Done } from "@/app/(workspace)/_components/useDone";
import { addThisRisk, changeThisRisk, dropThisRisk } from "@/app/(workspace)/projects/[code]/points/actions";
import { type ProjectRiskRow, RISK_STATES, type RiskState } from "@/lib/view/projectPoints";

interface RiskFormProps {
  readonly projectId: string;
  readonly currency: string;
  /** Null is a new one. */
  readonly risk: ProjectRiskRow | null;
  readonly trigger: string;
  readonly tell: (done: Done) => void;
}

const STATES = (Object.entries(RISK_STATES) as [RiskState, string][]).map(([value, label]) => ({
  value,
  label,
}));

/** The same of a stored one as it is typed. */
function saidOf({ what, chance, effect, action, owner, state }: ProjectRiskRow) {
  const percent = (share: number | undefined) =>
    share === undefined ? "" : String(Number((100 * share).toFixed(1)));
  return {
    ...{ what, action, owner, state, chanceLow: percent(chance?.low), chanceHigh: percent(chance?.high) },
    ...{ effectLow: effect?.low ?? "", effectHigh: effect?.high ?? "" },
  };
}

/** Adds a risk, or changes what is said of it. */
export function RiskForm({ projectId, currency, risk, trigger, tell }: RiskFormProps) {
  const save = (text: (name: string) => string) => {
    const said = {
      ...{ what: text("what"), chanceLow: text("chanceLow"), chanceHigh: text("chanceHigh") },
      ...{ effectLow: text("effectLow"), effectHigh: text("effectHigh") },
      ...{ action: text("action"), owner: text("owner"), state: text("state") as RiskState },
    };
    return orOffline(
      risk
        ? changeThisRisk({ riskId: risk.id, version: risk.version, ...said })
        : addThisRisk({ projectId, ...said }),
    );
  };
  return (
    <Dialog trigger={trigger} title={risk ? "Change the risk" : "A risk"} wide>
      {(close) => (
        <>
          <EntryForm
            submit="Keep it"
            save={save}
            onSaved={(mark) => {
              close();
              const undo = () => (risk ? changeThisRisk({ ...mark, ...saidOf(risk) }) : dropThisRisk(mark));
              tell({ message: "The risk is written down.", undo });
            }}
          >
            {(errorOf) => <RiskFields {...{ errorOf, risk, currency }} />}
          </EntryForm>
          {risk ? <Drop {...{ risk, projectId, tell, close }} /> : null}
        </>
      )}
    </Dialog>
  );
}

interface FieldsProps extends Pick<RiskFormProps, "risk" | "currency"> {
  readonly errorOf: (name: string) => string | undefined;
}

function RiskFields({ errorOf, risk, currency }: FieldsProps) {
  const said = risk ? saidOf(risk) : null;
  return (
    <div className="grid gap-4 sm:grid-cols-2">
      <div className="sm:col-span-2">
        <TextareaField
          name="what"
          label="What may happen"
          rows={2}
          maxLength={300}
          required
          defaultValue={said?.what ?? ""}
          error={errorOf("what")}
        />
      </div>
      <TextField
        name="chanceLow"
        label="Chance at least (%)"
        defaultValue={said?.chanceLow ?? ""}
        error={errorOf("chanceLow")}
      />
      <TextField
        name="chanceHigh"
        label="Chance at most (%)"
        defaultValue={said?.chanceHigh ?? ""}
        error={errorOf("chanceHigh")}
      />
      <TextField
        name="effectLow"
        label={`Would cost at least (${currency})`}
        defaultValue={said?.effectLow ?? ""}
        error={errorOf("effectLow")}
      />
      <TextField
        name="effectHigh"
        label={`Would cost at most (${currency})`}
        defaultValue={said?.effectHigh ?? ""}
        error={errorOf("effectHigh")}
      />
      <TextField
        name="action"
        label="What is done about it"
        maxLength={300}
        defaultValue={said?.action ?? ""}
        error={errorOf("action")}
      />
      <TextField
        name="owner"
        label="Who, as a function"
        defaultValue={said?.owner ?? ""}
        error={errorOf("owner")}
      />
      <SelectField
        name="state"
        label="State"
        choices={STATES}
        defaultValue={said?.state ?? "open"}
        error={errorOf("state")}
      />
    </div>
  );
}

interface DropProps extends Pick<RiskFormProps, "projectId" | "tell"> {
  readonly risk: ProjectRiskRow;
  readonly close: () => void;
}

function Drop({ risk, projectId, tell, close }: DropProps) {
  const drop = async () => {
    const answer = await orOffline(dropThisRisk({ riskId: risk.id, version: risk.version }));
    close();
    if (!answer.ok) return tell({ message: answer.error.reason });
    tell({ message: "The risk was removed.", undo: () => addThisRisk({ projectId, ...saidOf(risk) }) });
  };
  return (
    <div className="mt-3">
      <Button kind="quiet" onClick={drop}>
        Remove the risk
      </Button>
    </div>
  );
}
