"use client";

import { useRouter } from "next/navigation";
import { type FormEvent, useState, useTransition } from "react";
import { FormMessage } from "@/app/_ui/FormMessage";
import { TextField } from "@/app/_ui/field/TextField";
import { SubmitButton } from "@/app/_ui/SubmitButton";
import { keepThisPlan } from "@/app/(workspace)/plans/actions";
import type { Refusal } from "@/lib/access/action";
import type { PlanQuery } from "@/lib/view/planQuery";

interface KeepPlanProps {
  readonly query: PlanQuery;
  readonly asOf: string;
  readonly dataVersion: number;
}

/** Keeps the cut on the page as a draft plan and goes there. */
export function KeepPlan({ query, asOf, dataVersion }: KeepPlanProps) {
  const router = useRouter();
  const [pending, start] = useTransition();
  const [refusal, setRefusal] = useState<Refusal | null>(null);
  const send = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const name = String(new FormData(event.currentTarget).get("name") ?? "");
    const { year, by, fill, budget } = query;
    start(async () => {
      const kept = await keepThisPlan({
        ...{ name, year, by, fill, asOf, dataVersion, budget: String(budget) },
        pinnedIn: [...query.pinnedIn],
        pinnedOut: [...query.pinnedOut],
        costs: Object.fromEntries(Object.entries(query.costs).map(([code, cost]) => [code, String(cost)])),
      });
      if (!kept.ok) return setRefusal(kept.error);
      router.push(`/plans/${kept.value.id}?asOf=${asOf}`);
    });
  };
  return (
    <form onSubmit={send} noValidate className="no-print mt-5 flex flex-wrap items-end gap-3">
      <div className="min-w-64 flex-1 sm:max-w-md">
        <TextField
          name="name"
          label="Name of the plan"
          required
          maxLength={120}
          defaultValue={`Retrofits ${query.year}`}
          error={refusal?.fields?.name}
        />
      </div>
      <SubmitButton kind="plain" pending={pending}>
        Keep as a plan
      </SubmitButton>
      <div className="w-full">
        <FormMessage kind="problem">{refusal?.reason}</FormMessage>
      </div>
    </form>
  );
}
