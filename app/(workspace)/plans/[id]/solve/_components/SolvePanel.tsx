"use client";

import { useRouter } from "next/navigation";
import { useEffect, useState, useTransition } from "react";
import { Button } from "@/app/_ui/Button";
import { FormMessage } from "@/app/_ui/FormMessage";
import { cancelThisSolve, startThisSolve } from "@/app/(workspace)/plans/[id]/actions";
import type { Refusal } from "@/lib/access/action";
import type { Result } from "@/lib/kernel/result";
import { money } from "@/lib/view/format";
import { plainNumber } from "@/lib/view/number";
import { type SolveRunMark, solveStateWords } from "@/lib/view/solveRun";
import { moment } from "@/lib/view/time";

interface SolvePanelProps {
  readonly planId: string;
  readonly version: number;
  readonly writes: boolean;
  readonly latest: SolveRunMark | null;
}

const ASK_AGAIN_MS = 2_000;
const LIMITS = [20, 60, 180, 600];
const STEPS = {
  reading: "reading what is on record",
  model: "solving the model",
  exchange: "improving on the true worth",
  companions: "working out the curve and what stands beside",
} as const;

/** Starts the search, tells how far it is, and stops it. */
export function SolvePanel({ planId, version, writes, latest }: SolvePanelProps) {
  const router = useRouter();
  const [pending, start] = useTransition();
  const [refused, setRefused] = useState<string | null>(null);
  const [seconds, setSeconds] = useState(180);
  const running = latest?.state === "running";
  useEffect(() => {
    if (!running) return;
    const timer = setInterval(() => router.refresh(), ASK_AGAIN_MS);
    return () => clearInterval(timer);
  }, [running, router]);
  const run = (step: () => Promise<Result<unknown, Refusal>>) =>
    start(async () => {
      const answer = await step();
      setRefused(answer.ok ? null : answer.error.reason);
      router.refresh();
    });
  return (
    <section aria-label="Search" className="mb-6">
      <p className="measure mb-3 text-ink-2">
        Finds the ways and places of most worth within every limit: a linear model of the worth is solved to a
        bound first, then exchanged and corrected on the true worth of the whole group until nothing improves.
        The best of the model is proven; that of the true worth is the best found.
      </p>
      {writes && !running ? (
        <div className="flex flex-wrap items-end gap-3">
          <label>
            <span className="label block">Longest search</span>
            <select
              className="input"
              value={seconds}
              onChange={(event) => setSeconds(Number(event.target.value))}
            >
              {LIMITS.map((limit) => (
                <option key={limit} value={limit}>
                  {limit < 60 ? `${limit} s` : `${limit / 60} min`}
                </option>
              ))}
            </select>
          </label>
          <Button
            kind="primary"
            aria-disabled={pending}
            onClick={() => run(() => startThisSolve({ planId, version, timeLimitSeconds: seconds }))}
          >
            Search for the best plan
          </Button>
        </div>
      ) : null}
      {latest ? <Progress run={latest} /> : null}
      {latest && running && writes ? (
        <Button onClick={() => run(() => cancelThisSolve({ runId: latest.id }))}>Stop the search</Button>
      ) : null}
      <FormMessage kind="problem">{refused}</FormMessage>
    </section>
  );
}

function Progress({ run }: { readonly run: SolveRunMark }) {
  const { state, progress, worth, bound, gap, startedBy, startedAt, solver } = run;
  return (
    <div className="my-3 border-ink border-t pt-2">
      <p role="status" className="font-semibold">
        {solveStateWords(state)}
        {state === "running" ? `: ${STEPS[progress.step]}` : ""}
      </p>
      {state === "running" ? (
        <progress
          className="my-1 h-2 w-full max-w-md"
          max={1}
          value={progress.done}
          aria-label="Share done"
        />
      ) : null}
      <p className="text-[0.9375rem]">
        {worth === null ? "No plan yet." : `Best so far: ${money(worth)} less loss.`}{" "}
        {bound === null
          ? ""
          : `In the linear model no plan brings more than ${money(bound)} after what is asked for the money spent.`}{" "}
        {gap === null ? "" : `Gap of the model ${plainNumber(gap * 100, 2)} %.`}
      </p>
      <p className="text-ink-2 text-sm">
        Started by {startedBy}, {moment(startedAt, "UTC")} UTC; {solver}.
      </p>
    </div>
  );
}
