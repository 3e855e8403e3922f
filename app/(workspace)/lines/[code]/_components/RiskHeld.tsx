"use client";

import { Button } from "@/app/_ui/Button";
import { Dialog } from "@/app/_ui/Dialog";
import { RowTable } from "@/app/_ui/RowTable";
import { Section } from "@/app/_ui/Section";
import { UndoBar } from "@/app/_ui/UndoBar";
import { RowForm } from "@/app/(workspace)/_components/RowForm";
import { useDone } from "@/app/(workspace)/_components/useDone";
import {
  acceptThisRisk,
  endThisAcceptance,
  reopenThisAcceptance,
} from "@/app/(workspace)/lines/[code]/actions";
import { type Acceptance, acceptanceState, acceptanceWords } from "@/lib/view/acceptance";
import { moneySpan } from "@/lib/view/format";
import { day } from "@/lib/view/time";

interface RiskHeldProps {
  readonly lineId: string;
  readonly code: string;
  readonly acceptances: readonly Acceptance[];
  readonly asOf: string;
  readonly mayAccept: boolean;
  readonly showsAmounts: boolean;
}

const headsOf = (showsAmounts: boolean) => [
  ...["State", "Who", "From", "Until"],
  ...(showsAmounts ? [{ text: "Loss a year when accepted", end: true }] : []),
  "Why",
  { text: "Change", print: false },
];

/** Who answers for leaving the line as it is, and until when. */
export function RiskHeld({ lineId, code, acceptances, asOf, mayAccept, showsAmounts }: RiskHeldProps) {
  const { done, tell, undo, close } = useDone();
  const end = async ({ id, version, acceptedBy }: Acceptance) => {
    const answer = await endThisAcceptance({ acceptanceId: id, version });
    tell(
      answer.ok
        ? {
            message: `The risk held by ${acceptedBy} was ended.`,
            undo: () => reopenThisAcceptance(answer.value),
          }
        : { message: answer.error.reason },
    );
  };
  return (
    <Section
      id="risk-held"
      title="Risk held"
      lead="Somebody may answer for leaving the line as it is, until a day; then it comes back to be decided. No acceptance covers a safety or legal duty."
      actions={
        mayAccept ? (
          <Dialog trigger="Accept the risk" title={`Accept the risk of ${code}`} wide>
            {(closeDialog) => (
              <RowForm
                fields={[
                  {
                    name: "acceptedBy",
                    label: "Who accepts it",
                    hint: "A function, such as Plant manager PIN.",
                  },
                  { name: "until", label: "Until", date: true },
                  { name: "reason", label: "Why the line is left as it is" },
                ]}
                values={{ acceptedBy: "", until: "", reason: "" }}
                save={(typed) => acceptThisRisk({ ...typed, lineId })}
                onSaved={({ until }) => {
                  closeDialog();
                  tell({ message: `The risk of ${code} is held until ${day(until)}.` });
                }}
              />
            )}
          </Dialog>
        ) : undefined
      }
    >
      {acceptances.length === 0 ? (
        <p className="text-ink-2">Nobody has accepted the risk of this line.</p>
      ) : (
        <RowTable caption="Acceptances of risk" heads={headsOf(showsAmounts)}>
          {acceptances.map((one) => (
            <Row key={one.id} {...{ one, asOf, showsAmounts, mayAccept }} end={() => end(one)} />
          ))}
        </RowTable>
      )}
      <UndoBar message={done?.message ?? null} {...(done?.undo ? { onUndo: undo } : {})} onClose={close} />
    </Section>
  );
}

interface RowProps extends Pick<RiskHeldProps, "asOf" | "mayAccept" | "showsAmounts"> {
  readonly one: Acceptance;
  readonly end: () => void;
}

function Row({ one, asOf, mayAccept, showsAmounts, end }: RowProps) {
  const state = acceptanceState(one, asOf);
  return (
    <tr>
      <th scope="row" className={state === "review" ? "font-semibold text-worse" : ""}>
        {state === "review" ? "▲ " : ""}
        {acceptanceWords(one, asOf)}
      </th>
      <td>{one.acceptedBy}</td>
      <td>{day(one.acceptedOn)}</td>
      <td>{day(one.until)}</td>
      {showsAmounts ? <td data-align="end">{moneySpan(one.loss)}</td> : null}
      <td className="measure">
        {one.reason} <span className="text-ink-2">(recorded by {one.recordedBy})</span>
      </td>
      <td className="no-print">
        {mayAccept && state !== "ended" ? (
          <Button kind="quiet" onClick={end}>
            End it
          </Button>
        ) : null}
      </td>
    </tr>
  );
}
