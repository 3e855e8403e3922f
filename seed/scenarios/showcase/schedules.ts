import { validatedByRecord } from "@/lib/projects/axisSteps";
import type { AxisEntries } from "@/lib/retrofit/judgeAxis";
import type { AxisEntryRow, AxisRecordRow } from "@/seed/projectTables";
import type { PlannedAxis } from "@/seed/scenarios/showcase/axes";
import { WORK_DAYS } from "@/seed/scenarios/showcase/axisEntries";
import { projectId } from "@/seed/scenarios/showcase/projects";
import { GATES, type GateSpec, TASKS, type TaskSpec } from "@/seed/scenarios/showcase/taskSpecs";
import type {
  AxisStepRow,
  GateItemRow,
  ProjectAxisRow,
  ProjectGateRow,
  ProjectTaskRow,
  ReplanRow,
  TaskLinkRow,
} from "@/seed/scheduleTables";
import { seedId } from "@/seed/seedId";

const taskId = (project: string, code: string) => seedId("ProjectTask", `${project}/${code}`);
const linesOf = (text: string): string[][] =>
  text
    .trim()
    .split("\n")
    .map((line) => line.split(";"));
const orNull = (text: string | undefined) => (text === undefined || text === "-" ? null : text);
const number = (text: string | undefined) => (orNull(text) === null ? null : Number(text));

function stretch(text: string | undefined) {
  const [from, to] = (text ?? "-").split("/");
  return [orNull(from), orNull(to)] as const;
}

function tasksOf({ project, tasks }: TaskSpec): ProjectTaskRow[] {
  return linesOf(tasks).map((cells, i): ProjectTaskRow => {
    const [
      code = "",
      name = "",
      days,
      window,
      ,
      notBefore,
      base,
      plan,
      actual,
      milestone,
      who,
      crews,
      hands,
    ] = cells;
    const [baselineStart, baselineFinish] = stretch(base);
    const [plannedStart, plannedFinish] = plan === "=" ? [baselineStart, baselineFinish] : stretch(plan);
    const [startedOn, finishedOn] = stretch(actual);
    const place = orNull(milestone);
    return {
      ...{ id: taskId(project, code), projectId: projectId(project), code, sequence: i + 1, name },
      ...{ days: Number(days), inWindow: window === "w", who: orNull(who) ?? "" },
      ...{ crews: number(crews), engineers: number(hands), notBefore: orNull(notBefore) },
      ...{ plannedStart, plannedFinish, baselineStart, baselineFinish, startedOn, finishedOn },
      milestoneId: place === null ? null : seedId("Milestone", `${project}/${place}`),
    };
  });
}

function linksOf({ project, tasks }: TaskSpec): TaskLinkRow[] {
  return linesOf(tasks).flatMap(([code = "", , , , after]) =>
    (orNull(after)?.split(",") ?? []).map((before) => ({
      ...{ taskId: taskId(project, code), afterId: taskId(project, before), lag: 0 },
    })),
  );
}

/** The first plan is the baseline; a later one is followed by the plan in force. */
function replansOf(spec: TaskSpec): ReplanRow[] {
  const tasks = tasksOf(spec);
  const row = ({ code, name, days }: ProjectTaskRow, start: string | null, finish: string | null) => ({
    ...{ code, name, days, start, finish },
  });
  const none = tasks.map((task) => row(task, null, null));
  const base = tasks.map((task) => row(task, task.baselineStart, task.baselineFinish));
  const plan = tasks.map((task) => row(task, task.plannedStart, task.plannedFinish));
  return spec.replans.map(({ madeOn, madeBy, reason }, i) => ({
    ...{ id: seedId("Replan", `${spec.project}/${i + 1}`), projectId: projectId(spec.project) },
    ...{ number: i + 1, madeOn, madeBy, reason, createdAt: `${madeOn}T08:00:00.000Z` },
    before: JSON.stringify(i === 0 ? none : base),
    after: JSON.stringify(i === 0 ? base : plan),
  }));
}

const gateId = ({ project, name }: GateSpec) => seedId("ProjectGate", `${project}/${name}`);

const gateRows = (): ProjectGateRow[] =>
  GATES.map((gate, i) => ({
    ...{ id: gateId(gate), projectId: projectId(gate.project), sequence: i + 1, name: gate.name },
    taskId: taskId(gate.project, gate.guards),
    decision: gate.passed === null ? "open" : "passed",
    ...{ decidedOn: gate.passed?.[0] ?? null, decidedBy: gate.passed?.[1] ?? null, reason: "" },
  }));

const itemRows = (): GateItemRow[] =>
  GATES.flatMap((gate) =>
    linesOf(gate.items).map(([text = "", who = "", doneOn], i) => ({
      ...{
        id: seedId("GateItem", `${gateId(gate)}/${i + 1}`),
        gateId: gateId(gate),
        sequence: i + 1,
        text,
        who,
      },
      ...{ doneOn: orNull(doneOn), doneBy: orNull(doneOn) === null ? null : who },
    })),
  );

const RUNNING = "KAR-02-R1";
const AHEAD = "VEL-09-R1";

interface Stepped {
  readonly axisId: string;
  readonly project: string;
}

function steps(
  { axisId, project }: Stepped,
  done: readonly (readonly [AxisStepRow["step"], string, string])[],
) {
  return done.map(
    ([step, doneOn, doneBy]): AxisStepRow => ({
      ...{ id: seedId("AxisStep", `${project}/${axisId}/${step}`), projectId: projectId(project), axisId },
      ...{ step, doneOn, doneBy, recordedBy: doneBy },
    }),
  );
}

/** What the axis has done by its record: the last two steps, as the product makes them follow from it. */
function byRecord(record: AxisRecordRow, entries: readonly AxisEntryRow[]) {
  const read: AxisEntries = Object.fromEntries(
    entries.map((row) => [
      row.checkId,
      { ...row, asLeft: row.asLeft.slice(1, -1).split(",").filter(Boolean).map(Number) },
    ]),
  );
  const validated = validatedByRecord(read);
  return [
    ...(validated ? [["validated", validated.on, validated.by] as const] : []),
    ...(record.acceptedOn ? [["accepted", record.acceptedOn, record.acceptedBy ?? ""] as const] : []),
  ];
}

interface Records {
  readonly AxisRecord: readonly AxisRecordRow[];
  readonly AxisEntry: readonly AxisEntryRow[];
}

function axisStepRows(axes: readonly PlannedAxis[], { AxisRecord, AxisEntry }: Records): AxisStepRow[] {
  const recordOf = new Map(AxisRecord.map((record) => [record.axisId, record]));
  return axes.flatMap(({ id: axisId, machine, family }): AxisStepRow[] => {
    if (machine.line.code === "VEL-09")
      return steps({ axisId, project: AHEAD }, [
        ["surveyed", "2026-08-21", "Technician V1"],
        ["engineered", "2026-09-22", "Engineer V"],
      ]);
    const record = recordOf.get(axisId);
    if (!record) return [];
    const entries = AxisEntry.filter(({ recordId }) => recordId === record.id);
    const ring = { axisId, project: RUNNING };
    // Of those still on the ring, the ones whose values before removal are all written down.
    if (family === "HR")
      return entries.length < 8 ? [] : steps(ring, [["surveyed", "2026-11-18", "Technician K1"]]);
    return steps(ring, [
      ["surveyed", "2025-12-19", "Technician K1"],
      ["engineered", "2026-03-06", "Engineer K"],
      ["wired", "2026-07-20", "Integrator"],
      ["powered", WORK_DAYS.power, "Technician K2"],
      ["tuned", WORK_DAYS.motion, "Engineer K"],
      ...byRecord(record, entries),
    ]);
  });
}

/** The ring axes are converted in the second round. */
const roundRows = (axes: readonly PlannedAxis[]): ProjectAxisRow[] =>
  axes
    .filter(({ machine, family }) => machine.line.code === "KAR-02" && family === "HR")
    .map(({ id }) => ({ projectId: projectId(RUNNING), axisId: id, round: 2 }));

/** Tasks, plans, gates and axis steps of the invented projects. */
export function scheduleTables(axes: readonly PlannedAxis[], records: Records) {
  return {
    ProjectTask: TASKS.flatMap(tasksOf),
    TaskLink: TASKS.flatMap(linksOf),
    Replan: TASKS.flatMap(replansOf),
    ProjectGate: gateRows(),
    GateItem: itemRows(),
    AxisStep: axisStepRows(axes, records),
    ProjectAxis: roundRows(axes),
  };
}
