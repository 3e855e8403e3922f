"use client";

import { FormMessage } from "@/app/_ui/FormMessage";
import { Section } from "@/app/_ui/Section";
import { ChangeDone } from "@/app/(workspace)/projects/[code]/_components/ChangeDone";
import { useProjectChange } from "@/app/(workspace)/projects/[code]/_components/useProjectChange";
import { GateDecision } from "@/app/(workspace)/projects/[code]/schedule/_components/GateDecision";
import { setThisGateItem } from "@/app/(workspace)/projects/[code]/schedule/actions";
import type { ScheduleGate, ScheduleTask } from "@/lib/view/schedule";
import { day } from "@/lib/view/time";

interface GatesProps {
  readonly projectId: string;
  readonly gates: readonly ScheduleGate[];
  readonly tasks: readonly ScheduleTask[];
  readonly mayWrite: boolean;
}

/** The gates with what has to be true before each; none is passed while something is open. */
export function Gates({ projectId, gates, tasks, mayWrite }: GatesProps) {
  if (gates.length === 0) return null;
  return (
    <Section
      title="Gates"
      lead="A gate is passed by name and day once every item holds; the task it guards may not start before. Local procedure and law come first."
    >
      <div className="grid gap-6">
        {gates.map((gate) => (
          <Gate
            key={gate.id}
            {...{ projectId, gate, mayWrite }}
            guards={tasks.find(({ id }) => id === gate.taskId)?.code}
          />
        ))}
      </div>
    </Section>
  );
}

const STATES = { open: "○ open", passed: "● passed", held: "▲ held" } as const;

interface GateProps extends Pick<GatesProps, "projectId" | "mayWrite"> {
  readonly gate: ScheduleGate;
  readonly guards: string | undefined;
}

function Gate({ projectId, gate, guards, mayWrite }: GateProps) {
  const change = useProjectChange();
  const { name, decision, decidedOn, decidedBy, reason, items } = gate;
  const isLocked = decision === "passed" || !mayWrite;
  const set = (item: ScheduleGate["items"][number]) => {
    const seen = item.doneOn !== null;
    const ids = { projectId, itemId: item.id };
    change.run({
      run: () => setThisGateItem({ ...ids, seen, done: !seen }),
      done: seen ? `Open again: ${item.text}.` : `Holds: ${item.text}.`,
      undo: () => setThisGateItem({ ...ids, seen: !seen, done: seen }),
    });
  };
  return (
    <section aria-label={`Gate ${name}`} className="keep-together">
      <h3 className="font-semibold">
        {`${STATES[decision]}: ${name}`}
        {guards ? <span className="font-normal text-ink-2">{`, before ${guards}`}</span> : null}
      </h3>
      {decidedOn === null ? null : (
        <p>{`${decision === "passed" ? "Passed" : "Held"} on ${day(decidedOn)} by ${decidedBy}${reason === "" ? "" : `: ${reason}`}.`}</p>
      )}
      <ul className="my-2 grid gap-1">
        {items.map((item) => (
          <li key={item.id} className="flex flex-wrap items-baseline gap-x-3">
            <label className="inline-flex min-h-9 items-center gap-2.5 max-sm:min-h-11">
              <input
                type="checkbox"
                className="tick"
                checked={item.doneOn !== null}
                disabled={isLocked}
                onChange={() => set(item)}
              />
              {item.text}
            </label>
            <span className="text-ink-2 text-sm">
              {item.doneOn === null
                ? item.who === ""
                  ? "nobody named"
                  : item.who
                : `${day(item.doneOn)}, ${item.doneBy}`}
            </span>
          </li>
        ))}
      </ul>
      <FormMessage kind="problem">{change.refusal?.reason}</FormMessage>
      {mayWrite ? <GateDecision {...{ projectId, gate, change }} /> : null}
      <ChangeDone change={change} />
    </section>
  );
}
