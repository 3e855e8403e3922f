import { Dialog } from "@/app/_ui/Dialog";
import { EntryForm } from "@/app/_ui/EntryForm";
import { NumberField } from "@/app/_ui/field/NumberField";
import type { useProjectChange } from "@/app/(workspace)/projects/[code]/_components/useProjectChange";
import { TaskFields, typedTask } from "@/app/(workspace)/projects/[code]/schedule/_components/TaskFields";
import { addThisTask, removeThisTask } from "@/app/(workspace)/projects/[code]/schedule/actions";
import type { ScheduleFile } from "@/lib/view/schedule";

interface NewTaskProps {
  readonly file: ScheduleFile;
  readonly change: ReturnType<typeof useProjectChange>;
}

/** Adds a task; it is placed at once, and planned with the next plan. */
export function NewTask({ file, change }: NewTaskProps) {
  const { projectId } = file;
  return (
    <Dialog trigger="Add a task" title="Add a task" wide>
      {(close) => (
        <EntryForm
          submit="Add"
          save={async (text) => {
            const typed = typedTask(text, file.tasks);
            return typed.ok ? addThisTask({ projectId, days: Number(text("days")), ...typed.value }) : typed;
          }}
          onSaved={({ id: taskId }) => {
            change.tell({
              message: "Task added. It is planned with the next plan you keep.",
              undo: () => removeThisTask({ projectId, taskId, version: 1 }),
            });
            close();
          }}
        >
          {(errorOf) => (
            <>
              <TaskFields file={file} task={null} errorOf={errorOf} />
              <NumberField
                name="days"
                label="Working days"
                required
                min={1}
                step={1}
                error={errorOf("days")}
              />
            </>
          )}
        </EntryForm>
      )}
    </Dialog>
  );
}
