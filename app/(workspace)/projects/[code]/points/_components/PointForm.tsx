"use client";

import { Button } from "@/app/_ui/Button";
import { Dialog } from "@/app/_ui/Dialog";
import { orOffline } from "@/app/_ui/draft/orOffline";
import { EntryForm } from "@/app/_ui/EntryForm";
import { CheckboxField } from "@/app/_ui/field/CheckboxField";
import { DateField } from "@/app/_ui/field/DateField";
import { TextareaField } from "@/app/_ui/field/TextareaField";
import { TextField } from "@/app/_ui/field/TextField";
import type { Done } from "@/app/(workspace)/_components/useDone";
import {
  addThisPoint,
  changeThisPoint,
  dropThisPoint,
} from "@/app/(workspace)/projects/[code]/points/actions";
import type { OpenPointRow } from "@/lib/view/projectPoints";

interface PointFormProps {
  readonly projectId: string;
  /** Null is a new one. */
  readonly point: OpenPointRow | null;
  readonly trigger: string;
  readonly mayUndo: boolean;
  readonly tell: (done: Done) => void;
}

/** Adds a point, or changes what is said of it. */
export function PointForm({ projectId, point, trigger, mayUndo, tell }: PointFormProps) {
  const save = (text: (name: string) => string) => {
    const said = {
      what: text("what"),
      owner: text("owner"),
      dueOn: text("dueOn"),
      blocks: text("blocks") === "on",
    };
    return orOffline(
      point
        ? changeThisPoint({ pointId: point.id, version: point.version, ...said })
        : addThisPoint({ projectId, ...said }),
    );
  };
  return (
    <Dialog trigger={trigger} title={point ? "Change the point" : "An open point"}>
      {(close) => (
        <>
          <EntryForm
            submit="Keep it"
            save={save}
            onSaved={(mark) => {
              close();
              const undo = () =>
                point ? changeThisPoint({ ...mark, ...saidOf(point) }) : dropThisPoint(mark);
              tell({ message: "The point is written down.", ...(mayUndo ? { undo } : {}) });
            }}
          >
            {(errorOf) => (
              <>
                <TextareaField
                  name="what"
                  label="What is open"
                  rows={3}
                  maxLength={300}
                  required
                  defaultValue={point?.what ?? ""}
                  error={errorOf("what")}
                />
                <TextField
                  name="owner"
                  label="Who does it"
                  hint="A function"
                  required
                  defaultValue={point?.owner ?? ""}
                  error={errorOf("owner")}
                />
                <DateField
                  name="dueOn"
                  label="Due"
                  defaultValue={point?.dueOn ?? ""}
                  error={errorOf("dueOn")}
                />
                <CheckboxField
                  name="blocks"
                  label="The project is not accepted before it is done"
                  defaultChecked={point?.blocks ?? false}
                />
              </>
            )}
          </EntryForm>
          {point ? <Drop {...{ point, projectId, tell, close }} /> : null}
        </>
      )}
    </Dialog>
  );
}

const saidOf = ({ what, owner, dueOn, blocks }: OpenPointRow) => ({
  what,
  owner,
  blocks,
  dueOn: dueOn ?? "",
});

interface DropProps extends Pick<PointFormProps, "projectId" | "tell"> {
  readonly point: OpenPointRow;
  readonly close: () => void;
}

function Drop({ point, projectId, tell, close }: DropProps) {
  const drop = async () => {
    const answer = await orOffline(dropThisPoint({ pointId: point.id, version: point.version }));
    close();
    if (!answer.ok) return tell({ message: answer.error.reason });
    tell({ message: "The point was removed.", undo: () => addThisPoint({ projectId, ...saidOf(point) }) });
  };
  return (
    <div className="mt-3">
      <Button kind="quiet" onClick={drop}>
        Remove the point
      </Button>
    </div>
  );
}
