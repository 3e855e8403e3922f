"use client";

import type { FormEvent } from "react";
import type { useProjectChange } from "@/app/(workspace)/projects/[code]/_components/useProjectChange";
import { stateThisRest } from "@/app/(workspace)/projects/[code]/money/actions";
import type { CostClass } from "@/lib/schema/costClass";
import { costClassWords } from "@/lib/view/costClass";
import type { ProjectFile } from "@/lib/view/project";

interface RestFieldProps {
  readonly project: Pick<ProjectFile, "id" | "toOrder">;
  readonly costClass: CostClass;
  readonly change: ReturnType<typeof useProjectChange>;
}

/** What a class still needs, stated in place; empty is not stated. */
export function RestField({ project, costClass, change }: RestFieldProps) {
  const seen = project.toOrder.find((one) => one.costClass === costClass)?.amount ?? null;
  const name = costClassWords(costClass);
  const state = (text: string) => {
    const wanted = text.trim() === "" ? null : text.trim();
    if (wanted === seen) return;
    const which = { projectId: project.id, costClass };
    change.run({
      run: () => stateThisRest({ ...which, seen, wanted }),
      done: `${name}: still to order ${wanted ?? "not stated"}.`,
      undo: () => stateThisRest({ ...which, seen: wanted, wanted: seen }),
    });
  };
  const send = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    state(String(new FormData(event.currentTarget).get("rest") ?? ""));
  };
  return (
    <form key={seen} onSubmit={send} noValidate>
      <input
        name="rest"
        aria-label={`Still to order for ${name}`}
        className="input w-28 text-end"
        inputMode="decimal"
        autoComplete="off"
        defaultValue={seen ?? ""}
        placeholder="not stated"
        onBlur={(event) => state(event.currentTarget.value)}
      />
    </form>
  );
}
