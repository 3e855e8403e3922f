import { Button } from "@/app/_ui/Button";
import { Dialog } from "@/app/_ui/Dialog";
import { EntryForm } from "@/app/_ui/EntryForm";
import { DateField } from "@/app/_ui/field/DateField";
import type { useProjectChange } from "@/app/(workspace)/projects/[code]/_components/useProjectChange";
import { TaskFields, typedTask } from "@/app/(workspace)/projects/[code]/schedule/_components/TaskFields";
import {
  changeThisTask,
  markThisTask,
  removeThisTask,
} from "@/app/(workspace)/projects/[code]/schedule/actions";
import type { ScheduleFile, ScheduleTask } from "@/lib/view/schedule";
import { day } from "@/lib/view/time";

interface EditTaskProps {
  readonly file: ScheduleFile;
  readonly task: ScheduleTask;
  readonly change: ReturnType<typeof useProjectChange>;
}

/** Says when a task really began and ended, what it is, or takes it away. */
export function EditTask({ file, task, change }: EditTaskProps) {
  const ids = { projectId: file.projectId, taskId: task.id };
  return (
    <Dialog trigger={task.code} kind="quiet" title={`${task.code} ${task.name}`} wide>
      {(close) => (
        <div className="grid gap-8">
          <Happened {...{ ids, task, change, close }} />
          <EntryForm
            submit="Save the task"
            save={async (text) => {
              const typed = typedTask(text, file.tasks);
              return typed.ok ? changeThisTask({ ...ids, version: task.version, ...typed.value }) : typed;
            }}
            onSaved={() => {
              change.tell({ message: `${task.code} saved.`, undo: null });
              close();
            }}
          >
            {(errorOf) => <TaskFields file={file} task={task} errorOf={errorOf} />}
          </EntryForm>
          {task.startedOn === null ? (
            <div>
              <Button
                kind="danger"
                onClick={() => {
                  change.run({
                    run: () => removeThisTask({ ...ids, version: task.version }),
                    done: `${task.code} taken away.`,
                  });
                  close();
                }}
              >
                Take this task away
              </Button>
            </div>
          ) : null}
        </div>
      )}
    </Dialog>
  );
}

interface HappenedProps extends Pick<EditTaskProps, "task" | "change"> {
  readonly ids: { readonly projectId: string; readonly taskId: string };
  readonly close: () => void;
}

/** The days on which the task really began and ended. */
function Happened({ ids, task, change, close }: HappenedProps) {
  const seen = { startedOn: task.startedOn, finishedOn: task.finishedOn };
  const orNull = (text: string) => (text === "" ? null : text);
  return (
    <EntryForm
      submit="Save the days"
      save={async (text) => {
        const wanted = { startedOn: orNull(text("startedOn")), finishedOn: orNull(text("finishedOn")) };
        const saved = await markThisTask({ ...ids, seen, wanted });
        return saved.ok ? { ok: true, value: wanted } : saved;
      }}
      onSaved={(wanted) => {
        const ended = wanted.finishedOn === null ? "" : `, ended ${day(wanted.finishedOn)}`;
        change.tell({
          message:
            wanted.startedOn === null
              ? `${task.code}: not begun.`
              : `${task.code}: began ${day(wanted.startedOn)}${ended}.`,
          undo: () => markThisTask({ ...ids, seen: wanted, wanted: seen }),
        });
        close();
      }}
    >
      {(errorOf) => (
        <div className="grid gap-4 sm:grid-cols-2">
          <DateField
            name="startedOn"
            label="Began"
            defaultValue={task.startedOn ?? ""}
            error={errorOf("startedOn")}
          />
          <DateField
            name="finishedOn"
            label="Ended"
            defaultValue={task.finishedOn ?? ""}
            error={errorOf("finishedOn")}
          />
        </div>
      )}
    </EntryForm>
  );
}
