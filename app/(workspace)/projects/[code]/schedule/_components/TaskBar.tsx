import { type KeyboardEvent, type PointerEvent, useRef } from "react";
import { daysBetween } from "@/lib/kernel/isoDate";
import {
  type ChartDays,
  type ScheduleGate,
  type ScheduleRow,
  type ScheduleWindow,
  shiftDay,
  type TaskDraft,
} from "@/lib/view/schedule";
import { dayRange } from "@/lib/view/time";

/** The time line every bar is drawn on. */
export interface BarScale extends ChartDays {
  readonly asOf: string;
  readonly windows: readonly ScheduleWindow[];
}

interface TaskBarProps {
  readonly row: ScheduleRow;
  readonly scale: BarScale;
  /** Gates that guard the task. */
  readonly gates: readonly ScheduleGate[];
  readonly onMove: ((id: string, wanted: TaskDraft | null) => void) | null;
}

const WORK_DAYS_A_WEEK = 5;
const CALENDAR_DAYS_A_WEEK = 7;

/** A task on the time line: first plan, plan, what is done and how it now looks; moved by hand or by key. */
export function TaskBar({ row, scale, gates, onMove }: TaskBarProps) {
  const { task, now } = row;
  const held = useRef<{ readonly x: number; readonly start: string } | null>(null);
  const at = (day: string) => daysBetween(scale.from, day);
  const bar = (from: string, to: string) => ({ x: at(from), width: daysBetween(from, to) + 1 });
  const moveTo = (start: string) => onMove?.(task.id, { days: task.days, notBefore: start });
  const onKeyDown = (event: KeyboardEvent) => {
    const by = { ArrowLeft: -1, ArrowRight: 1 }[event.key];
    if (event.key === "Escape") onMove?.(task.id, null);
    else if (by) moveTo(shiftDay(now.start, by * (event.shiftKey ? WORK_DAYS_A_WEEK : 1)));
    else return;
    event.preventDefault();
  };
  const onPointerDown = (event: PointerEvent<SVGSVGElement>) => {
    event.currentTarget.setPointerCapture(event.pointerId);
    held.current = { x: event.clientX, start: now.start };
  };
  const onPointerMove = (event: PointerEvent<SVGSVGElement>) => {
    if (held.current === null) return;
    const perDay = event.currentTarget.getBoundingClientRect().width / scale.days;
    const days = Math.round((event.clientX - held.current.x) / perDay);
    const whole = Math.round((days * WORK_DAYS_A_WEEK) / CALENDAR_DAYS_A_WEEK);
    const start = shiftDay(held.current.start, whole);
    if (start !== now.start) moveTo(start);
  };
  const words = `${task.code}: ${dayRange(now.start, now.finish)}`;
  const moved = onMove
    ? {
        ...{ onKeyDown, onPointerDown, onPointerMove, tabIndex: 0, role: "slider" },
        onPointerUp: () => {
          held.current = null;
        },
        ...{ "aria-valuemin": 0, "aria-valuemax": scale.days, "aria-valuenow": at(now.start) },
        ...{ "aria-valuetext": words, "aria-orientation": "horizontal" as const },
      }
    : { role: "img" };
  return (
    <svg
      aria-label={onMove ? `Place of ${task.code}` : words}
      viewBox={`0 0 ${scale.days} 24`}
      preserveAspectRatio="none"
      className={`block h-7 w-full ${onMove ? "cursor-ew-resize touch-pan-y" : ""}`}
      {...moved}
    >
      <title>{words}</title>
      {scale.windows.map(({ id, startsOn, endsOn }) => (
        <rect key={id} {...bar(startsOn, endsOn)} y="0" height="24" fill="var(--accent-soft)" />
      ))}
      {task.baselineStart && task.baselineFinish ? (
        <rect {...bar(task.baselineStart, task.baselineFinish)} y="20" height="3" fill="var(--rule-2)" />
      ) : null}
      <Now row={row} asOf={scale.asOf} bar={bar} />
      {task.plannedStart && task.plannedFinish ? (
        <rect
          {...bar(task.plannedStart, task.plannedFinish)}
          y="4"
          height="12"
          fill="none"
          stroke="var(--ink-2)"
          vectorEffect="non-scaling-stroke"
        />
      ) : null}
      <line
        x1={at(scale.asOf)}
        x2={at(scale.asOf)}
        y1="0"
        y2="24"
        stroke="var(--ink)"
        vectorEffect="non-scaling-stroke"
      />
      {gates.map(({ id }) => (
        <path
          key={id}
          d={diamond(at(now.start), scale.days / 120)}
          fill="var(--sheet)"
          stroke="var(--ink)"
          vectorEffect="non-scaling-stroke"
        />
      ))}
    </svg>
  );
}

interface NowProps {
  readonly row: ScheduleRow;
  readonly asOf: string;
  readonly bar: (from: string, to: string) => { readonly x: number; readonly width: number };
}

/** How the task lies now, dark as far as it is done; one that runs is dark up to today. */
function Now({ row: { task, now }, asOf, bar }: NowProps) {
  const until = task.finishedOn ?? asOf;
  return (
    <>
      <rect
        {...bar(now.start, now.finish)}
        y="6"
        height="8"
        fill={now.critical ? "var(--money-4)" : "var(--money-2)"}
        stroke="var(--money-4)"
        vectorEffect="non-scaling-stroke"
      />
      {task.startedOn !== null && task.startedOn <= until ? (
        <rect {...bar(task.startedOn, until)} y="8" height="4" fill="var(--ink)" />
      ) : null}
    </>
  );
}

/** A mark of half the height of a bar, as wide as it is high on most screens. */
function diamond(x: number, half: number): string {
  return `M${x - half} 10L${x} 2L${x + half} 10L${x} 18Z`;
}
