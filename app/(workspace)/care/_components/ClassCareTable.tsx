"use client";

import { Dialog } from "@/app/_ui/Dialog";
import { orOffline } from "@/app/_ui/draft/orOffline";
import { EntryForm } from "@/app/_ui/EntryForm";
import { NumberField } from "@/app/_ui/field/NumberField";
import { SelectField } from "@/app/_ui/field/SelectField";
import { RowTable } from "@/app/_ui/RowTable";
import { UndoBar } from "@/app/_ui/UndoBar";
import { type Done, useDone } from "@/app/(workspace)/_components/useDone";
import { setThisClassCare } from "@/app/(workspace)/care/actions";
import type { CareKind } from "@/lib/risk/careIntervals";
import { itemClassName } from "@/lib/view/linePart";
import { type ClassCare, careKinds } from "@/lib/view/storageCare";
import { day, months } from "@/lib/view/time";

const HEADS = ["Class", "Care", "Every", "Basis", { text: "Change", print: false }] as const;

interface SetCareProps {
  readonly one: ClassCare;
  readonly tell: (done: Done) => void;
}

function SetCare({ one, tell }: SetCareProps) {
  const { itemClass, kind, everyMonths } = one;
  const name = itemClassName(itemClass);
  return (
    <Dialog trigger={`Change ${name}`} kind="quiet" title={`Storage care of ${name}`}>
      {(close) => (
        <EntryForm
          submit="Set it"
          save={async (text) => {
            const wanted = { kind: text("kind") as CareKind, everyMonths: text("everyMonths") };
            const made = await orOffline(
              setThisClassCare({ itemClass, ...wanted, seen: { kind, everyMonths } }),
            );
            return made.ok ? { ok: true, value: wanted } : made;
          }}
          onSaved={({ kind: nextKind, everyMonths: next }) => {
            close();
            const seen = { kind: nextKind, everyMonths: next === "" ? null : Number(next) };
            const before = everyMonths === null ? "" : String(everyMonths);
            const undo = () => setThisClassCare({ itemClass, kind, everyMonths: before, seen });
            tell({ message: `Storage care of ${name} set.`, undo });
          }}
        >
          {(errorOf) => (
            <div className="grid gap-4 sm:grid-cols-2">
              <SelectField
                name="kind"
                label="Care"
                required
                choices={careKinds}
                defaultValue={kind}
                error={errorOf("kind")}
              />
              <NumberField
                name="everyMonths"
                label="Every"
                unit="months"
                hint="Empty needs none."
                min={1}
                step={1}
                defaultValue={everyMonths ?? ""}
                error={errorOf("everyMonths")}
              />
            </div>
          )}
        </EntryForm>
      )}
    </Dialog>
  );
}

interface ClassCareTableProps {
  readonly classes: readonly ClassCare[];
  readonly mayChange: boolean;
}

/** The interval of each class, and where it comes from. */
export function ClassCareTable({ classes, mayChange }: ClassCareTableProps) {
  const { done, tell, undo, close } = useDone();
  return (
    <>
      <RowTable caption="Storage care by class" heads={HEADS}>
        {classes.map((one) => (
          <tr key={one.itemClass}>
            <th scope="row">{itemClassName(one.itemClass)}</th>
            <td>
              {one.everyMonths === null ? "" : careKinds.find(({ value }) => value === one.kind)?.label}
            </td>
            <td>{one.everyMonths === null ? "none needed" : months(one.everyMonths)}</td>
            <td>
              {one.changedOn === null
                ? "common practice, no source"
                : `set by ${one.changedBy} on ${day(one.changedOn)}`}
            </td>
            <td className="no-print">{mayChange ? <SetCare one={one} tell={tell} /> : null}</td>
          </tr>
        ))}
      </RowTable>
      <UndoBar message={done?.message ?? null} {...(done?.undo ? { onUndo: undo } : {})} onClose={close} />
    </>
  );
}
