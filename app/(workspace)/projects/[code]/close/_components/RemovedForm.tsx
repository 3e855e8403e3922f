"use client";

import { Button } from "@/app/_ui/Button";
import { Dialog } from "@/app/_ui/Dialog";
import { orOffline } from "@/app/_ui/draft/orOffline";
import { EntryForm } from "@/app/_ui/EntryForm";
import { DateField } from "@/app/_ui/field/DateField";
import { SelectField } from "@/app/_ui/field/SelectField";
import { TextField } from "@/app/_ui/field/TextField";
import type { Done } from "@/app/(workspace)/_components/useDone";
import {
  addThisRemoved,
  changeThisRemoved,
  dropThisRemoved,
} from "@/app/(workspace)/projects/[code]/close/actions";
import type { ReleaseResult } from "@/lib/projects/closeOut";
import type { DrivePlace, RemovedRow } from "@/lib/view/closeOut";

const RESULTS = [
  { value: "usable", label: "Usable: it ran under load" },
  { value: "unproven", label: "Unproven: looked at, not run" },
  { value: "needs_repair", label: "Needs repair: goes on hold" },
  { value: "scrapped", label: "Scrapped" },
] as const;

interface RemovedFormProps {
  readonly projectId: string;
  readonly places: readonly DrivePlace[];
  readonly today: string;
  /** Null is a new one. */
  readonly unit: RemovedRow | null;
  readonly trigger: string;
  readonly tell: (done: Done) => void;
}

/** What is said of a removed unit, as it is sent. */
function saidOf(text: (name: string) => string) {
  return {
    ...{ positionId: text("positionId"), plate: text("plate"), serial: text("serial") },
    ...{ revision: text("revision"), removedOn: text("removedOn"), testedBy: text("testedBy") },
    ...{ how: text("how"), testedOn: text("testedOn"), bin: text("bin") },
    result: text("result") as ReleaseResult | "",
  };
}

/** The same of a stored one, to put it back as it was. */
function storedOf(unit: RemovedRow) {
  const { positionId, part: plate, serial, revision, removedOn, result, testedBy, how, testedOn, bin } = unit;
  return {
    ...{ plate, serial, revision, removedOn, testedBy, how, bin },
    ...{ positionId: positionId ?? "", result: result ?? ("" as const), testedOn: testedOn ?? "" },
  };
}

/** Records a removed unit, or writes what its test said. */
export function RemovedForm({ projectId, places, today, unit, trigger, tell }: RemovedFormProps) {
  const save = (text: (name: string) => string) =>
    orOffline(
      unit
        ? changeThisRemoved({ unitId: unit.id, version: unit.version, ...saidOf(text) })
        : addThisRemoved({ projectId, ...saidOf(text) }),
    );
  return (
    <Dialog trigger={trigger} title={unit ? `${unit.part} ${unit.serial}` : "A removed unit"} wide>
      {(close) => (
        <>
          <EntryForm
            submit="Keep it"
            save={save}
            onSaved={(mark) => {
              close();
              const undo = () =>
                unit ? changeThisRemoved({ ...mark, ...storedOf(unit) }) : dropThisRemoved(mark);
              tell({ message: "The unit is written down.", undo });
            }}
          >
            {(errorOf) => <RemovedFields {...{ errorOf, unit, places, today }} />}
          </EntryForm>
          {unit ? <Drop {...{ unit, projectId, tell, close }} /> : null}
        </>
      )}
    </Dialog>
  );
}

interface DropProps extends Pick<RemovedFormProps, "projectId" | "tell"> {
  readonly unit: RemovedRow;
  readonly close: () => void;
}

function Drop({ unit, projectId, tell, close }: DropProps) {
  const drop = async () => {
    const answer = await orOffline(dropThisRemoved({ unitId: unit.id, version: unit.version }));
    close();
    if (!answer.ok) return tell({ message: answer.error.reason });
    tell({
      message: `${unit.part} ${unit.serial} was removed from the list.`,
      undo: () => addThisRemoved({ projectId, ...storedOf(unit) }),
    });
  };
  return (
    <div className="mt-3">
      <Button kind="quiet" onClick={drop}>
        It never came out: take the record away
      </Button>
    </div>
  );
}

interface FieldsProps extends Pick<RemovedFormProps, "unit" | "places" | "today"> {
  readonly errorOf: (name: string) => string | undefined;
}

function RemovedFields({ errorOf, unit, places, today }: FieldsProps) {
  const choices = places.map(({ id, name }) => ({ value: id, label: name }));
  return (
    <div className="grid gap-4 sm:grid-cols-2">
      <TextField
        name="plate"
        label="Number on its plate"
        required
        defaultValue={unit?.part ?? ""}
        error={errorOf("plate")}
      />
      <TextField
        name="serial"
        label="Serial number"
        defaultValue={unit?.serial ?? ""}
        error={errorOf("serial")}
      />
      <TextField
        name="revision"
        label="Revision on its plate"
        defaultValue={unit?.revision ?? ""}
        error={errorOf("revision")}
      />
      <SelectField
        name="positionId"
        label="Came out of"
        empty="Not recorded"
        choices={choices}
        defaultValue={unit?.positionId ?? ""}
        error={errorOf("positionId")}
      />
      <DateField
        name="removedOn"
        label="Out on"
        required
        defaultValue={unit?.removedOn ?? today}
        error={errorOf("removedOn")}
      />
      <SelectField
        name="result"
        label="What the test said"
        empty="Not tested yet"
        choices={RESULTS}
        defaultValue={unit?.result ?? ""}
        error={errorOf("result")}
      />
      <TextField
        name="testedBy"
        label="Tested by, as a function"
        defaultValue={unit?.testedBy ?? ""}
        error={errorOf("testedBy")}
      />
      <DateField
        name="testedOn"
        label="Tested on"
        defaultValue={unit?.testedOn ?? ""}
        error={errorOf("testedOn")}
      />
      <TextField name="how" label="How it was tested" defaultValue={unit?.how ?? ""} error={errorOf("how")} />
      <TextField
        name="bin"
        label="Bin it will lie in"
        defaultValue={unit?.bin ?? ""}
        error={errorOf("bin")}
      />
    </div>
  );
}
