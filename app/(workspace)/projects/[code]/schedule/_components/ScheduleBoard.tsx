"use client";

import { useMemo } from "react";
import { Button } from "@/app/_ui/Button";
import { useDraft } from "@/app/_ui/draft/useDraft";
import { EmptyState } from "@/app/_ui/EmptyState";
import { KeyFigure } from "@/app/_ui/KeyFigure";
import { KeyFigures } from "@/app/_ui/KeyFigures";
import { Notice } from "@/app/_ui/Notice";
import { Section } from "@/app/_ui/Section";
import { ChangeDone } from "@/app/(workspace)/projects/[code]/_components/ChangeDone";
import { useProjectChange } from "@/app/(workspace)/projects/[code]/_components/useProjectChange";
import { KeepPlan } from "@/app/(workspace)/projects/[code]/schedule/_components/KeepPlan";
import { NewTask } from "@/app/(workspace)/projects/[code]/schedule/_components/NewTask";
import { ScheduleKey } from "@/app/(workspace)/projects/[code]/schedule/_components/ScheduleKey";
import { TaskTable } from "@/app/(workspace)/projects/[code]/schedule/_components/TaskTable";
import {
  refusalWords,
  type ScheduleDraft,
  type ScheduleFile,
  scheduleClashes,
  scheduleView,
  type TaskDraft,
} from "@/lib/view/schedule";
import { day, distance } from "@/lib/view/time";

interface ScheduleBoardProps {
  readonly file: ScheduleFile;
  readonly asOf: string;
  readonly mayWrite: boolean;
}

/** The tasks with their bars; one that is moved shows at once what it does to its followers and to the end. */
export function ScheduleBoard({ file, asOf, mayWrite }: ScheduleBoardProps) {
  const change = useProjectChange();
  const { draft, move, drop } = useScheduleDraft(file);
  const kept = useMemo(() => scheduleView(file, {}, asOf), [file, asOf]);
  const view = useMemo(() => scheduleView(file, draft, asOf), [file, draft, asOf]);
  if (!view.ok || !kept.ok)
    return (
      <Notice kind="problem" title="The tasks cannot be placed">
        {view.ok ? "" : refusalWords(view.error, file.tasks)}
      </Notice>
    );
  const clashes = scheduleClashes(file, view.value);
  const { finish, plannedFinish, baselineFinish } = view.value;
  return (
    <>
      <KeyFigures>
        <KeyFigure
          label="Ends, as it now looks"
          value={day(finish)}
          span={finish ? distance(finish, asOf) : ""}
        />
        <KeyFigure label="By the plan in force" value={day(plannedFinish)} span={planWords(file)} />
        <KeyFigure label="By the first plan" value={day(baselineFinish)} />
      </KeyFigures>
      {clashes.length > 0 ? (
        <Notice kind="caution" title="Clashes">
          <ul className="list-disc pl-5">
            {clashes.map((text) => (
              <li key={text}>{text}</li>
            ))}
          </ul>
        </Notice>
      ) : null}
      <Section title="Tasks" actions={mayWrite ? <NewTask {...{ file, change }} /> : null}>
        {file.tasks.length === 0 ? (
          <EmptyState title="No tasks yet">
            A project started from a plan has the usual tasks; to this one, add them one by one.
          </EmptyState>
        ) : (
          <>
            <TaskTable
              {...{ file, view: view.value, asOf, change, mayWrite }}
              onMove={mayWrite ? move : null}
            />
            <ScheduleKey mayWrite={mayWrite} />
          </>
        )}
        {mayWrite ? (
          <KeepPlan
            {...{ file, draft, change, view: view.value, keptFinish: kept.value.finish }}
            onKept={drop}
          />
        ) : null}
        {Object.keys(draft).length > 0 ? (
          <Button className="mt-2" kind="quiet" onClick={drop}>
            Drop these changes
          </Button>
        ) : null}
      </Section>
      <ChangeDone change={change} />
    </>
  );
}

/** What is moved and not kept yet; it stays on this device until it is kept or dropped. */
function useScheduleDraft({ projectId, replans, tasks }: ScheduleFile) {
  const version = replans[0]?.number ?? 0;
  const stored = useMemo(() => ({ entry: {} as ScheduleDraft, version }), [version]);
  const { entry, keep, clear } = useDraft(`ebbline schedule ${projectId}`, stored);
  const open = useMemo(
    () => new Set(tasks.filter(({ finishedOn }) => finishedOn === null).map(({ id }) => id)),
    [tasks],
  );
  // A task that ended or went meanwhile cannot be moved any more.
  const draft = useMemo(
    () => Object.fromEntries(Object.entries(entry).filter(([id]) => open.has(id))),
    [entry, open],
  );
  const drop = () => clear(stored);
  const move = (id: string, wanted: TaskDraft | null) => {
    const { [id]: _, ...others } = draft;
    const next = wanted === null ? others : { ...others, [id]: wanted };
    if (Object.keys(next).length === 0) drop();
    else keep({ entry: next, version });
  };
  return { draft, move, drop };
}

function planWords({ replans }: ScheduleFile): string {
  const [last] = replans;
  return last ? `plan ${last.number} of ${day(last.madeOn)}` : "no plan is kept yet";
}
