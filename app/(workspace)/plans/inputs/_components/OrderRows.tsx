"use client";

import { Button } from "@/app/_ui/Button";
import { Dialog } from "@/app/_ui/Dialog";
import { RowTable } from "@/app/_ui/RowTable";
import { Section } from "@/app/_ui/Section";
import { UndoBar } from "@/app/_ui/UndoBar";
import { RowForm } from "@/app/(workspace)/_components/RowForm";
import { type Done, useDone } from "@/app/(workspace)/_components/useDone";
import {
  addThisOrder,
  removeThisFreeze,
  removeThisOrder,
  saveThisFreeze,
} from "@/app/(workspace)/plans/inputs/actions";
import type { Freeze, PlanInputs, Precedence } from "@/lib/view/planInputs";
import { day, dayRange } from "@/lib/view/time";

interface OrderRowsProps {
  readonly inputs: Pick<PlanInputs, "freezes" | "precedences" | "writesGroup">;
  /** Lines the person may plan. */
  readonly lines: readonly { readonly id: string; readonly code: string; readonly name: string }[];
}

const FREEZE_HEADS = ["Freeze", "From", "For work in", "Source", "Owner", { text: "Change", print: false }];
const ORDER_HEADS = ["First", "Then", "Why", "Source", "Owner", { text: "Change", print: false }];
const SAID = [
  { name: "source", label: "Where it comes from" },
  { name: "owner", label: "Who answers for it", hint: "A function, not a person's name." },
] as const;

/** Days from which no request is taken, and lines that wait for others. */
export function OrderRows({ inputs, lines }: OrderRowsProps) {
  const { done, tell, undo, close } = useDone();
  return (
    <>
      <FreezeSection freezes={inputs.freezes} writes={inputs.writesGroup} tell={tell} />
      <OrderSection precedences={inputs.precedences} lines={lines} tell={tell} />
      <UndoBar message={done?.message ?? null} {...(done?.undo ? { onUndo: undo } : {})} onClose={close} />
    </>
  );
}

interface Telling {
  readonly tell: (done: Done) => void;
}

function FreezeSection(props: { readonly freezes: readonly Freeze[]; readonly writes: boolean } & Telling) {
  const { freezes, writes, tell } = props;
  const remove = async ({ id, version, ...freeze }: Freeze) => {
    const answer = await removeThisFreeze({ freezeId: id, version });
    tell(
      answer.ok
        ? {
            message: `Removed: ${freeze.name}.`,
            undo: () => saveThisFreeze({ ...freeze, freezeId: null, version: null }),
          }
        : { message: answer.error.reason },
    );
  };
  const form = (freeze: Freeze | null, close: () => void) => (
    <RowForm
      fields={[
        { name: "name", label: "Name" },
        { name: "freezesOn", label: "No request after", date: true },
        { name: "coversFrom", label: "For work from", date: true },
        { name: "coversTo", label: "To", date: true },
        ...SAID,
      ]}
      values={freeze ?? { name: "", freezesOn: "", coversFrom: "", coversTo: "", source: "", owner: "" }}
      save={({ name, freezesOn, coversFrom, coversTo, source, owner }) =>
        saveThisFreeze({
          ...{ name, freezesOn, coversFrom, coversTo, source, owner },
          ...{ freezeId: freeze?.id ?? null, version: freeze?.version ?? null },
        })
      }
      onSaved={({ name }) => {
        close();
        tell({ message: `Kept: ${name}.` });
      }}
    />
  );
  return (
    <Section
      title="Approval freeze"
      lead="Once the day is past, no new work is planned into the stretch it is for."
      actions={
        writes ? (
          <Dialog trigger="Add a freeze" title="Add a freeze" wide>
            {(close) => form(null, close)}
          </Dialog>
        ) : undefined
      }
    >
      {freezes.length === 0 ? <p className="text-ink-2">None is on record.</p> : null}
      {freezes.length > 0 ? (
        <RowTable caption="Approval freezes" heads={FREEZE_HEADS}>
          {freezes.map((freeze) => (
            <tr key={freeze.id}>
              <th scope="row">{freeze.name}</th>
              <td>{day(freeze.freezesOn)}</td>
              <td>{dayRange(freeze.coversFrom, freeze.coversTo)}</td>
              <td className="text-ink-2">{freeze.source}</td>
              <td>{freeze.owner}</td>
              <td className="no-print whitespace-nowrap">
                {writes ? (
                  <>
                    <Dialog trigger="Change" kind="quiet" title={`Change: ${freeze.name}`} wide>
                      {(close) => form(freeze, close)}
                    </Dialog>
                    <Button kind="quiet" aria-label={`Remove ${freeze.name}`} onClick={() => remove(freeze)}>
                      Remove
                    </Button>
                  </>
                ) : null}
              </td>
            </tr>
          ))}
        </RowTable>
      ) : null}
    </Section>
  );
}

function OrderSection({
  precedences,
  lines,
  tell,
}: Pick<OrderRowsProps, "lines"> & { readonly precedences: readonly Precedence[] } & Telling) {
  const choices = lines.map(({ id, code, name }) => ({ value: id, label: `${code} ${name}` }));
  const remove = async ({ id, version, first, following, reason, source, owner }: Precedence) => {
    const answer = await removeThisOrder({ precedenceId: id, version });
    tell(
      answer.ok
        ? {
            message: `${following.code} no longer waits for ${first.code}.`,
            undo: () => addThisOrder({ firstId: first.id, thenId: following.id, reason, source, owner }),
          }
        : { message: answer.error.reason },
    );
  };
  return (
    <Section
      title="One line before another"
      lead="The first must be over before work on the second begins. Within a line, the controller always comes before the drives."
      actions={
        lines.length > 1 ? (
          <Dialog trigger="Add an order" title="One line before another" wide>
            {(close) => (
              <RowForm
                fields={[
                  { name: "firstId", label: "First", choices },
                  { name: "thenId", label: "Then", choices },
                  { name: "reason", label: "Why" },
                  ...SAID,
                ]}
                values={{ firstId: "", thenId: "", reason: "", source: "", owner: "" }}
                save={addThisOrder}
                onSaved={() => {
                  close();
                  tell({ message: "The order is kept." });
                }}
              />
            )}
          </Dialog>
        ) : undefined
      }
    >
      {precedences.length === 0 ? (
        <p className="text-ink-2">No order between lines is on record.</p>
      ) : (
        <RowTable caption="Order between lines" heads={ORDER_HEADS}>
          {precedences.map((one) => (
            <tr key={one.id}>
              <th scope="row" className="whitespace-nowrap">
                {one.first.code}
              </th>
              <td className="whitespace-nowrap">{one.following.code}</td>
              <td>{one.reason}</td>
              <td className="text-ink-2">{one.source}</td>
              <td>{one.owner}</td>
              <td className="no-print">
                {lines.some(({ id }) => id === one.first.id) &&
                lines.some(({ id }) => id === one.following.id) ? (
                  <Button
                    kind="quiet"
                    aria-label={`Remove ${one.first.code} before ${one.following.code}`}
                    onClick={() => remove(one)}
                  >
                    Remove
                  </Button>
                ) : null}
              </td>
            </tr>
          ))}
        </RowTable>
      )}
    </Section>
  );
}
