"use client";

import { type FormEvent, useState, useTransition } from "react";
import { Button } from "@/app/_ui/Button";
import { orOffline } from "@/app/_ui/draft/orOffline";
import { FormMessage } from "@/app/_ui/FormMessage";
import type { Done } from "@/app/(workspace)/_components/useDone";
import { StepForm } from "@/app/(workspace)/projects/[code]/cutover/_components/StepForm";
import { clockThisStep } from "@/app/(workspace)/projects/[code]/cutover/actions";
import type { ExpectedStep } from "@/lib/projects/cutover";
import { CUTOVER_CAUTIONS, isCutoverCaution } from "@/lib/projects/cutoverCautions";
import { type CutoverPlan, type CutoverStepRow, clockReading, span } from "@/lib/view/cutover";
import { moment } from "@/lib/view/time";

interface StepCardProps {
  readonly plan: CutoverPlan;
  readonly step: CutoverStepRow;
  readonly expected: ExpectedStep;
  readonly timeZone: string;
  readonly mayWrite: boolean;
  /** What the floor has to do with now: it runs, or is the first to come. */
  readonly next: boolean;
  readonly tell: (done: Done) => void;
}

const MARKS = { "to-come": "○ to come", running: "◐ running", done: "● over" } as const;

/** One step on the floor: big enough for a thumb in a glove. */
export function StepCard({ plan, step, expected, timeZone, mayWrite, next, tell }: StepCardProps) {
  const { title, who, phone, needs, caution } = step;
  return (
    <article className="grid gap-2 border border-rule-2 px-4 py-3" aria-label={title}>
      <div className="flex flex-wrap items-baseline justify-between gap-x-6 gap-y-1">
        <h3 className="font-semibold text-lg">{title}</h3>
        <p className="whitespace-nowrap font-semibold">{MARKS[expected.state]}</p>
      </div>
      <p className="text-ink-2">
        Planned {moment(expected.plannedStart, timeZone)}, {span(step.hours)}. {timeWords(expected, timeZone)}
      </p>
      <p>
        {who === "" ? "Nobody named" : who}
        {phone === "" ? null : (
          <>
            , <a href={`tel:${phone.replaceAll(" ", "")}`}>{phone}</a>
          </>
        )}
        {needs === "" ? null : <span className="text-ink-2"> · needs: {needs}</span>}
      </p>
      {isCutoverCaution(caution) ? (
        <p className="border-ink border-l-4 pl-3 text-sm">
          <strong>{CUTOVER_CAUTIONS[caution].title}.</strong> {CUTOVER_CAUTIONS[caution].text}
        </p>
      ) : null}
      {mayWrite ? (
        <div className="flex flex-wrap items-start gap-3">
          <ClockButtons key={step.version} {...{ step, timeZone, next, tell }} />
          <StepForm {...{ plan, step, tell }} trigger="Change" />
        </div>
      ) : null}
    </article>
  );
}

function timeWords({ state, start, end, lateHours }: ExpectedStep, timeZone: string): string {
  const late =
    Math.abs(lateHours) < 1 / 60 ? "on time" : `${span(lateHours)} ${lateHours > 0 ? "late" : "early"}`;
  if (state === "done") return `Was from ${moment(start, timeZone)} to ${moment(end, timeZone)}, ${late}.`;
  if (state === "running")
    return `Runs since ${moment(start, timeZone)}, expected to end ${moment(end, timeZone)}, ${late}.`;
  if (late === "on time") return "";
  return `Expected ${moment(start, timeZone)} to ${moment(end, timeZone)}, ${late}.`;
}

type ClockProps = Pick<StepCardProps, "step" | "timeZone" | "next" | "tell">;

interface Times {
  readonly startedAt: string;
  readonly endedAt: string;
}

/** The button for what comes next, and both times to type where it was not now. */
function ClockButtons({ step, timeZone, next, tell }: ClockProps) {
  const [pending, start] = useTransition();
  const [problem, setProblem] = useState<string | null>(null);
  const { id: stepId, version, title } = step;
  const before: Times = {
    startedAt: clockReading(step.startedAt, timeZone),
    endedAt: clockReading(step.endedAt, timeZone),
  };
  const write = (times: Times) =>
    start(async () => {
      const answer = await orOffline(clockThisStep({ stepId, version, ...times }));
      if (!answer.ok) return setProblem(answer.error.reason);
      tell({
        message: `Times of “${title}” are written down.`,
        undo: () => clockThisStep({ ...answer.value, ...before }),
      });
    });
  const now = () => clockReading(new Date().toISOString(), timeZone);
  const typed = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const data = new FormData(event.currentTarget);
    write({ startedAt: String(data.get("startedAt") ?? ""), endedAt: String(data.get("endedAt") ?? "") });
  };
  return (
    <div className="grid gap-2">
      <div className="flex flex-wrap gap-3">
        {step.startedAt === null ? (
          <BigButton
            label={`Begins now: ${title}`}
            {...{ pending, next }}
            onPress={() => write({ ...before, startedAt: now() })}
          >
            Begins now
          </BigButton>
        ) : null}
        {step.startedAt !== null && step.endedAt === null ? (
          <BigButton
            label={`Over now: ${title}`}
            {...{ pending, next }}
            onPress={() => write({ ...before, endedAt: now() })}
          >
            Over now
          </BigButton>
        ) : null}
      </div>
      <details className="disclosure">
        <summary className="py-2 text-sm">Type the times</summary>
        <form onSubmit={typed} noValidate className="flex flex-wrap items-end gap-3">
          <TimeField name="startedAt" label="Began" value={before.startedAt} />
          <TimeField name="endedAt" label="Over" value={before.endedAt} />
          <Button type="submit" aria-disabled={pending} className="min-h-11">
            Write them down
          </Button>
        </form>
      </details>
      <FormMessage kind="problem">{problem ?? undefined}</FormMessage>
    </div>
  );
}

interface BigButtonProps {
  readonly label: string;
  readonly pending: boolean;
  readonly next: boolean;
  readonly onPress: () => void;
  readonly children: string;
}

function BigButton({ label, pending, next, onPress, children }: BigButtonProps) {
  return (
    <Button
      kind={next ? "primary" : "plain"}
      className="min-h-14 min-w-40 text-lg"
      aria-label={label}
      aria-disabled={pending}
      onClick={() => {
        if (!pending) onPress();
      }}
    >
      {children}
    </Button>
  );
}

interface TimeFieldProps {
  readonly name: string;
  readonly label: string;
  readonly value: string;
}

function TimeField({ name, label, value }: TimeFieldProps) {
  return (
    <label className="grid gap-1 font-semibold text-[0.9375rem]">
      {label}
      <input type="datetime-local" name={name} defaultValue={value} className="input min-h-11" />
    </label>
  );
}
