"use client";

import { FormMessage } from "@/app/_ui/FormMessage";
import { RowTable } from "@/app/_ui/RowTable";
import { Section } from "@/app/_ui/Section";
import { ChangeDone } from "@/app/(workspace)/projects/[code]/_components/ChangeDone";
import { useProjectChange } from "@/app/(workspace)/projects/[code]/_components/useProjectChange";
import { setThisMilestone } from "@/app/(workspace)/projects/actions";
import { milestoneShare } from "@/lib/projects/progress";
import type { ProjectFile, ProjectMilestone } from "@/lib/view/project";
import { day } from "@/lib/view/time";

interface MilestonesProps {
  readonly project: Pick<ProjectFile, "id" | "milestones">;
  readonly overdue: readonly string[];
  readonly asOf: string;
  readonly mayWrite: boolean;
}

interface Days {
  readonly dueOn: string | null;
  readonly doneOn: string | null;
}

/** The milestones with their weights; due and done days are set in place and can be taken back. */
export function Milestones({ project, overdue, asOf, mayWrite }: MilestonesProps) {
  const change = useProjectChange();
  const whole = project.milestones.reduce((sum, { weight }) => sum + weight, 0);
  const set = (milestone: ProjectMilestone, wanted: Days) => {
    const seen = { dueOn: milestone.dueOn, doneOn: milestone.doneOn };
    const ids = { projectId: project.id, milestoneId: milestone.id };
    change.run({
      run: () => setThisMilestone({ ...ids, seen, wanted }),
      done: `${milestone.name}: due ${day(wanted.dueOn)}, ${wanted.doneOn === null ? "not done" : `done ${day(wanted.doneOn)}`}.`,
      undo: () => setThisMilestone({ ...ids, seen: wanted, wanted: seen }),
    });
  };
  return (
    <Section title="Milestones">
      <FormMessage kind="problem">{change.refusal?.reason}</FormMessage>
      <RowTable
        caption="Milestones"
        heads={["Milestone", { text: "Share of the budget", end: true }, "Due", "Done", "State"]}
      >
        {project.milestones.map((one) => (
          <tr key={one.id}>
            <th scope="row">{one.name}</th>
            <td data-align="end">{((100 * one.weight) / whole).toFixed(0)} %</td>
            <td>
              {mayWrite ? (
                <DayBox
                  key={`${one.dueOn}`}
                  label={`Due day of ${one.name}`}
                  value={one.dueOn}
                  onDay={(dueOn) => set(one, { dueOn, doneOn: one.doneOn })}
                />
              ) : (
                day(one.dueOn)
              )}
            </td>
            <td>
              {one.axes ? (
                byAxes(one, asOf)
              ) : mayWrite ? (
                <DayBox
                  key={`${one.doneOn}`}
                  label={`Done day of ${one.name}`}
                  value={one.doneOn}
                  onDay={(doneOn) => set(one, { dueOn: one.dueOn, doneOn })}
                />
              ) : one.doneOn === null ? (
                "not done"
              ) : (
                day(one.doneOn)
              )}
            </td>
            <td>{stateOf(one, { overdue, asOf })}</td>
          </tr>
        ))}
      </RowTable>
      <ChangeDone change={change} />
    </Section>
  );
}

/** How many of its axes have done the step a milestone is earned by. */
function byAxes({ axes, axisStep }: ProjectMilestone, asOf: string): string {
  const done = axes?.done.reduce((sum, { on, axes: count }) => sum + (on <= asOf ? count : 0), 0) ?? 0;
  return `${done} of ${axes?.total ?? 0} axes ${axisStep}`;
}

function stateOf(one: ProjectMilestone, at: { overdue: readonly string[]; asOf: string }): string {
  if (milestoneShare(one, at.asOf) === 1) return "● done";
  if (at.overdue.includes(one.id)) return "▲ overdue";
  return one.dueOn === null ? "◌ not dated" : "○ to come";
}

interface DayBoxProps {
  readonly label: string;
  readonly value: string | null;
  readonly onDay: (day: string | null) => void;
}

/** A day that is saved when the field is left or Enter pressed; emptied is no day. */
function DayBox({ label, value, onDay }: DayBoxProps) {
  const save = (typed: string) => {
    const wanted = typed === "" ? null : typed;
    if (wanted !== value) onDay(wanted);
  };
  return (
    <input
      type="date"
      className="input max-w-44"
      aria-label={label}
      defaultValue={value ?? ""}
      onBlur={(event) => save(event.currentTarget.value)}
      onKeyDown={(event) => {
        if (event.key === "Enter") save(event.currentTarget.value);
      }}
    />
  );
}
