"use client";

import { Dialog } from "@/app/_ui/Dialog";
import { orOffline } from "@/app/_ui/draft/orOffline";
import { EntryForm } from "@/app/_ui/EntryForm";
import { SelectField } from "@/app/_ui/field/SelectField";
import { TextareaField } from "@/app/_ui/field/TextareaField";
import type { Done } from "@/app/(workspace)/_components/useDone";
import { settleThisFinding, takeThisFindingBack } from "@/app/(workspace)/sightings/actions";
import { SIGHT_ANSWERS, type SightAnswer, type SightRow } from "@/lib/view/sighting";

interface SettleFindingProps {
  readonly row: SightRow;
  readonly siteId: string;
  readonly tell: (done: Done) => void;
}

/** Asks what somebody decides of a finding. */
export function SettleFinding({ row, siteId, tell }: SettleFindingProps) {
  const { mark, place, device, said, answers } = row;
  const name = place || device;
  return (
    <Dialog trigger={`Settle ${name}`} kind="quiet" title={`Settle ${name}`}>
      {(close) => (
        <EntryForm
          submit="Decide"
          save={(text) =>
            orOffline(
              settleThisFinding({
                ...{ siteId, mark, reason: text("reason") },
                answer: text("answer") as SightAnswer,
              }),
            )
          }
          onSaved={({ verdictId }) => {
            close();
            tell({ message: `${name} settled.`, undo: () => takeThisFindingBack({ verdictId }) });
          }}
        >
          {(errorOf) => (
            <>
              <ul className="list-disc pl-5">
                {said.map((one) => (
                  <li key={one}>{one}</li>
                ))}
              </ul>
              <SelectField
                name="answer"
                label="What holds"
                required
                choices={answers.map((value) => ({ value, label: SIGHT_ANSWERS[value] }))}
                error={errorOf("answer")}
              />
              <TextareaField
                name="reason"
                label="Why"
                hint="Needed unless you take over what was seen."
                maxLength={300}
                error={errorOf("reason")}
              />
            </>
          )}
        </EntryForm>
      )}
    </Dialog>
  );
}
