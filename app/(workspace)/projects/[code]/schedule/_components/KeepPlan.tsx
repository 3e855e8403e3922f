import { useRouter } from "next/navigation";
import { type FormEvent, useState } from "react";
import { FormMessage } from "@/app/_ui/FormMessage";
import { TextField } from "@/app/_ui/field/TextField";
import { SubmitButton } from "@/app/_ui/SubmitButton";
import type { useProjectChange } from "@/app/(workspace)/projects/[code]/_components/useProjectChange";
import { keepThisPlan } from "@/app/(workspace)/projects/[code]/schedule/actions";
import { count } from "@/lib/view/number";
import type { ScheduleDraft, ScheduleFile, ScheduleView } from "@/lib/view/schedule";
import { day } from "@/lib/view/time";

interface KeepPlanProps {
  readonly file: ScheduleFile;
  readonly draft: ScheduleDraft;
  readonly change: ReturnType<typeof useProjectChange>;
  readonly view: ScheduleView;
  /** Last day without the changes. */
  readonly keptFinish: string | null;
  readonly onKept: () => void;
}

/** Puts what is on the screen in force as the plan, with the reason. */
export function KeepPlan({ file, draft, change, view, keptFinish, onKept }: KeepPlanProps) {
  const [reason, setReason] = useState("");
  const router = useRouter();
  const seen = file.replans[0]?.number ?? 0;
  const moved = Object.keys(draft).length;
  const holds = view.rows.every(
    ({ task, now }) => task.plannedStart === now.start && task.plannedFinish === now.finish,
  );
  if (file.tasks.length === 0 || (moved === 0 && holds)) return null;
  const former = file.tasks.filter(({ id }) => id in draft);
  const send = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const { projectId } = file;
    const tasks = Object.entries(draft).map(([id, wanted]) => ({ id, ...wanted }));
    const back = former.map(({ id, days, notBefore }) => ({ id, days, notBefore }));
    change.run({
      run: async () => {
        const kept = await keepThisPlan({ projectId, seen, reason, tasks });
        // What was moved here then lies on top of the plan that came in between.
        if (!kept.ok && kept.error.code === "conflict") router.refresh();
        return kept;
      },
      done: ({ number }) => `Plan ${number} is in force; the former one is kept below.`,
      undo: ({ number }) =>
        keepThisPlan({ projectId, seen: number, reason: `Plan ${number} taken back`, tasks: back }),
      after: () => {
        setReason("");
        onKept();
      },
    });
  };
  return (
    <form
      onSubmit={send}
      noValidate
      aria-label="Keep a plan"
      className="no-print mt-4 grid gap-3 border-2 border-ink p-4"
    >
      <p role="status" className="font-semibold">
        {summary({ seen, moved, keptFinish, finish: view.finish, planned: view.plannedFinish })}
      </p>
      <FormMessage kind="problem">{change.refusal?.reason}</FormMessage>
      <TextField
        name="reason"
        label={seen === 0 ? "What the first plan rests on" : "Why the plan changes"}
        required
        maxLength={400}
        value={reason}
        onChange={(event) => setReason(event.target.value)}
        error={change.refusal?.fields?.reason}
      />
      <div>
        <SubmitButton pending={change.pending}>
          {seen === 0 ? "Keep the first plan" : "Keep this plan"}
        </SubmitButton>
      </div>
    </form>
  );
}

interface Summary {
  readonly seen: number;
  readonly moved: number;
  readonly keptFinish: string | null;
  readonly finish: string | null;
  readonly planned: string | null;
}

function summary({ seen, moved, keptFinish, finish, planned }: Summary): string {
  const change = moved === 0 ? "" : `${count(moved, "task")} changed. `;
  if (seen === 0)
    return `${change}No plan is kept yet. The first is the baseline, and dates the milestones that have no day.`;
  if (moved > 0)
    return keptFinish === finish
      ? `${change}The end stays ${day(finish)}.`
      : `${change}The end moves from ${day(keptFinish)} to ${day(finish)}.`;
  return planned === finish
    ? "Tasks lie elsewhere than planned; the end holds."
    : `The plan no longer holds: it ends ${day(finish)}, planned was ${day(planned)}.`;
}
