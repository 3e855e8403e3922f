import { RowTable } from "@/app/_ui/RowTable";
import type { PlacedTask, Schedule } from "@/lib/retrofit/scope/schedule";
import { normWords } from "@/lib/view/lineScope";
import { plainNumber } from "@/lib/view/number";

const PHASES = { prepare: "Prepare", build: "Build ahead", window: "In the window", after: "After" } as const;
const ORDER = Object.keys(PHASES);

const HEADS = [
  "Task",
  "When",
  { text: "Working days", end: true },
  "After",
  { text: "Slack, days", end: true },
  "On the time line",
];

/** The tasks with their days, what comes before each, and a bar on the time line; the longest way is marked in words too. */
export function TaskBars({ schedule }: { readonly schedule: Schedule }) {
  const tasks = [...schedule.tasks].sort(
    (a, b) => ORDER.indexOf(a.phase) - ORDER.indexOf(b.phase) || a.start - b.start || (a.id < b.id ? -1 : 1),
  );
  return (
    <>
      <p className="measure mb-3">
        {`Longest way: ${schedule.criticalPath.join(" → ")}; ${normWords(schedule.total)} working days from start to close.`}
      </p>
      <RowTable caption="Tasks of the retrofit" heads={HEADS}>
        {tasks.map((task) => (
          <TaskRow key={task.id} task={task} total={schedule.total[1]} />
        ))}
      </RowTable>
    </>
  );
}

function TaskRow({ task, total }: { readonly task: PlacedTask; readonly total: number }) {
  const { id, name, phase, days, after, slack, critical } = task;
  return (
    <tr>
      <th scope="row">
        <span className="text-ink-2">{id}</span> {name}
      </th>
      <td>{PHASES[phase]}</td>
      <td data-align="end">{normWords(days, 1)}</td>
      <td>{after.join(", ")}</td>
      <td data-align="end">{critical ? "longest way" : plainNumber(slack)}</td>
      <td>
        <Bar task={task} total={total} />
      </td>
    </tr>
  );
}

function Bar({
  task: { start, end, critical },
  total,
}: {
  readonly task: PlacedTask;
  readonly total: number;
}) {
  const at = (value: number) => (total === 0 ? 0 : (100 * value) / total);
  const words = `Day ${plainNumber(start)} to ${plainNumber(end)}`;
  return (
    <svg
      role="img"
      aria-label={words}
      viewBox="0 0 100 14"
      preserveAspectRatio="none"
      className="inline-block h-3.5 w-full min-w-40"
    >
      <title>{words}</title>
      <line x1="0" x2="100" y1="13" y2="13" stroke="var(--rule-2)" vectorEffect="non-scaling-stroke" />
      <rect
        x={at(start)}
        y="3"
        width={Math.max(0.6, at(end) - at(start))}
        height="8"
        fill={critical ? "var(--money-4)" : "var(--sheet)"}
        stroke="var(--money-4)"
        vectorEffect="non-scaling-stroke"
      />
    </svg>
  );
}
