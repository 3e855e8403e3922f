"use client";

import { Button } from "@/app/_ui/Button";
import { Dialog } from "@/app/_ui/Dialog";
import { orOffline } from "@/app/_ui/draft/orOffline";
import { EntryForm } from "@/app/_ui/EntryForm";
import { TextField } from "@/app/_ui/field/TextField";
import { RowTable } from "@/app/_ui/RowTable";
import { Section } from "@/app/_ui/Section";
import { UndoBar } from "@/app/_ui/UndoBar";
import { type Done, useDone } from "@/app/(workspace)/_components/useDone";
import { stateThis, withdrawThis } from "@/app/(workspace)/projects/[code]/close/actions";
import type { CloseStatementKind } from "@/lib/projects/closeOut";
import { STATEMENT_WORDS, type StatementRow } from "@/lib/view/closeOut";
import { day } from "@/lib/view/time";

interface StatementsProps {
  readonly projectId: string;
  readonly statements: readonly StatementRow[];
  readonly mayWrite: boolean;
}

const HEADS = ["Statement", "Answered for by", "On", "Word"] as const;
const KINDS = Object.keys(STATEMENT_WORDS) as CloseStatementKind[];

/** What no record can show, and who answers for it. */
export function Statements({ projectId, statements, mayWrite }: StatementsProps) {
  const { done, tell, undo, close } = useDone();
  const said = new Map(statements.map((one) => [one.kind, one]));
  return (
    <Section
      title="Answered for by name"
      id="statements"
      lead="What no record can show. The last three are only needed where they apply."
    >
      <RowTable caption="Statements" heads={mayWrite ? [...HEADS, { text: "Change", print: false }] : HEADS}>
        {KINDS.map((kind) => {
          const one = said.get(kind);
          return (
            <tr key={kind}>
              <th scope="row">{STATEMENT_WORDS[kind]}</th>
              <td>{one?.statedBy ?? "○ nobody"}</td>
              <td className="whitespace-nowrap">{one ? day(one.statedOn) : ""}</td>
              <td>{one?.note}</td>
              {mayWrite ? (
                <td className="no-print">
                  {one ? (
                    <Withdraw {...{ projectId, one, tell }} />
                  ) : (
                    <StateForm {...{ projectId, kind, tell }} />
                  )}
                </td>
              ) : null}
            </tr>
          );
        })}
      </RowTable>
      <UndoBar message={done?.message ?? null} {...(done?.undo ? { onUndo: undo } : {})} onClose={close} />
    </Section>
  );
}

interface StateFormProps {
  readonly projectId: string;
  readonly kind: CloseStatementKind;
  readonly tell: (done: Done) => void;
}

/** Short names of the buttons, so that each says what it is for. */
const ABOUT: Readonly<Record<CloseStatementKind, string>> = {
  register: "the register",
  drawings: "the drawings",
  levels: "the levels",
  commitments: "open orders",
  no_axes: "no axes",
  none_removed: "nothing removed",
};

function StateForm({ projectId, kind, tell }: StateFormProps) {
  return (
    <Dialog trigger={`Answer for ${ABOUT[kind]}`} title={STATEMENT_WORDS[kind]}>
      {(close) => (
        <EntryForm
          submit="Keep it"
          save={(text) =>
            orOffline(stateThis({ projectId, kind, statedBy: text("statedBy"), note: text("note") }))
          }
          onSaved={() => {
            close();
            tell({ message: "Written down.", undo: () => withdrawThis({ projectId, kind }) });
          }}
        >
          {(errorOf) => (
            <>
              <TextField
                name="statedBy"
                label="Who answers for it"
                hint="A function, such as storeroom lead"
                required
                error={errorOf("statedBy")}
              />
              <TextField
                name="note"
                label={kind === "commitments" ? "Why they may stay open" : "What was looked at"}
                required={kind === "commitments"}
                error={errorOf("note")}
              />
            </>
          )}
        </EntryForm>
      )}
    </Dialog>
  );
}

interface WithdrawProps {
  readonly projectId: string;
  readonly one: StatementRow;
  readonly tell: (done: Done) => void;
}

function Withdraw({ projectId, one, tell }: WithdrawProps) {
  const { kind, statedBy, note } = one;
  const withdraw = async () => {
    const answer = await orOffline(withdrawThis({ projectId, kind }));
    if (!answer.ok) return tell({ message: answer.error.reason });
    tell({ message: "The word was taken back.", undo: () => stateThis({ projectId, kind, statedBy, note }) });
  };
  return (
    <Button kind="quiet" aria-label={`Take back the word on ${ABOUT[kind]}`} onClick={withdraw}>
      Take back
    </Button>
  );
}
