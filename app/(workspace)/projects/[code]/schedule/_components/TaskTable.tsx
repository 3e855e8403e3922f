import { Months } from "@/app/(workspace)/projects/_components/Months";
import type { useProjectChange } from "@/app/(workspace)/projects/[code]/_components/useProjectChange";
import { EditTask } from "@/app/(workspace)/projects/[code]/schedule/_components/EditTask";
import { type BarScale, TaskBar } from "@/app/(workspace)/projects/[code]/schedule/_components/TaskBar";
import {
  chartDays,
  linkWords,
  type ScheduleFile,
  type ScheduleRow,
  type ScheduleView,
  type TaskDraft,
} from "@/lib/view/schedule";
import { day } from "@/lib/view/time";

interface TaskTableProps {
  readonly file: ScheduleFile;
  readonly view: ScheduleView;
  readonly asOf: string;
  readonly change: ReturnType<typeof useProjectChange>;
  readonly mayWrite: boolean;
  /** Null shows without letting move. */
  readonly onMove: ((id: string, wanted: TaskDraft | null) => void) | null;
}

/** On paper every column has its share, so that the bars leave room for words. */
const HEADS = [
  { text: "Task", width: "print:w-[23%]" },
  { text: "After", width: "print:w-[8%]" },
  { text: "Days", width: "print:w-[5%]", end: true },
  { text: "From", width: "print:w-[12%]" },
  { text: "To", width: "print:w-[9%]" },
  { text: "Can slip", width: "print:w-[5%]", end: true },
] as const;

/** More tasks than this scroll by themselves, so that the months stay in sight. */
const LONG = 30;

/** The tasks as a table, each with its bar on one time line beside it. */
export function TaskTable({ file, view, asOf, change, mayWrite, onMove }: TaskTableProps) {
  const scale: BarScale = { ...chartDays(view, asOf), asOf, windows: file.windows };
  return (
    <div className="table-frame" data-long={view.rows.length > LONG ? "" : undefined}>
      <table className="table">
        <caption className="sr-only">Tasks of the project</caption>
        <thead>
          <tr>
            {HEADS.map(({ text, width, ...head }) => (
              <th
                key={text}
                scope="col"
                className={`label ${width}`}
                data-align={"end" in head ? "end" : undefined}
              >
                {text}
              </th>
            ))}
            <th scope="col" className="label">
              <Months {...scale} />
            </th>
          </tr>
        </thead>
        <tbody>
          {view.rows.map((row) => (
            <TaskRow key={row.task.id} {...{ file, row, scale, change, mayWrite, onMove }} />
          ))}
        </tbody>
      </table>
    </div>
  );
}

interface TaskRowProps extends Pick<TaskTableProps, "file" | "change" | "mayWrite" | "onMove"> {
  readonly row: ScheduleRow;
  readonly scale: BarScale;
}

function TaskRow({ file, row, scale, change, mayWrite, onMove }: TaskRowProps) {
  const { task, now, isDraft } = row;
  const { id, code, name, who, days, notBefore, inWindow } = task;
  const gates = file.gates.filter(({ taskId }) => taskId === id);
  return (
    <tr>
      <th scope="row" className="min-w-48 lg:min-w-64 print:min-w-0">
        {mayWrite ? <EditTask {...{ file, task, change }} /> : <span className="font-semibold">{code}</span>}{" "}
        {name}
        {inWindow ? (
          <abbr title="Needs a shutdown" className="no-underline">
            {" "}
            w
          </abbr>
        ) : null}
        <span className="block text-ink-2 text-sm">{who === "" ? "nobody named" : who}</span>
      </th>
      <td>{linkWords(task, file.tasks)}</td>
      <td data-align="end">
        {onMove && task.finishedOn === null ? (
          <input
            type="number"
            min={1}
            max={2000}
            className="input w-20 text-right"
            aria-label={`Working days of ${code}`}
            value={days}
            onChange={(event) => {
              const wanted = event.target.valueAsNumber;
              if (Number.isSafeInteger(wanted) && wanted >= 1 && wanted <= 2000)
                onMove(id, { days: wanted, notBefore });
            }}
          />
        ) : (
          days
        )}
      </td>
      <td className="whitespace-nowrap">
        {day(now.start)}
        <span className="block text-ink-2 text-sm">{stateWords(row)}</span>
        {notBefore !== null && task.startedOn === null ? (
          <EarliestDay
            {...{ code, notBefore }}
            onLift={onMove ? () => onMove(id, { days, notBefore: null }) : null}
          />
        ) : null}
      </td>
      <td className="whitespace-nowrap">{day(now.finish)}</td>
      <td data-align="end">{slipWords(row)}</td>
      <td className="w-full min-w-[28rem] print:w-auto print:min-w-0">
        <TaskBar {...{ row, scale, gates, onMove: task.startedOn === null ? onMove : null }} />
        {isDraft ? <span className="text-sm">changed, not kept</span> : null}
      </td>
    </tr>
  );
}

interface EarliestDayProps {
  readonly code: string;
  readonly notBefore: string;
  readonly onLift: (() => void) | null;
}

/** The day a task may not begin before, and a way to lift it. */
function EarliestDay({ code, notBefore, onLift }: EarliestDayProps) {
  return (
    <span className="block text-ink-2 text-sm">
      {`not before ${day(notBefore)} `}
      {onLift ? (
        <button
          type="button"
          className="no-print cursor-pointer underline"
          aria-label={`Lift the earliest day of ${code}`}
          onClick={onLift}
        >
          lift
        </button>
      ) : null}
    </span>
  );
}

function stateWords({ task, now }: ScheduleRow): string {
  if (task.finishedOn !== null) return "● done";
  if (task.startedOn !== null) return "◐ begun";
  if (now.outsideWindow) return "▲ in no shutdown";
  return task.plannedStart !== null && now.start > task.plannedStart ? "▲ later than planned" : "○ to come";
}

function slipWords({ now }: ScheduleRow): string {
  if (now.totalFloat === null) return "–";
  return now.critical ? "none" : `${now.totalFloat} d`;
}
