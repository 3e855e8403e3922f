"use client";

import { useRouter } from "next/navigation";
import { useEffect, useState, useTransition } from "react";
import { Button } from "@/app/_ui/Button";
import { FormMessage } from "@/app/_ui/FormMessage";
import { Notice } from "@/app/_ui/Notice";
import { readOnceMore, stopWork } from "@/app/(workspace)/import/actions";
import type { ImportProgress } from "@/lib/view/importView";
import { count, plainNumber } from "@/lib/view/number";

const LOOK_AGAIN_MS = 1_500;

const TITLES: Readonly<Record<ImportProgress["state"], string>> = {
  reading: "The file is being read",
  loading: "The file is being loaded",
  interrupted: "The work on this file broke off",
  failed: "The file could not be read",
  stopped: "The work on this file was stopped",
};

function explain({ state, note }: ImportProgress): string {
  if (state === "reading") return "You may leave this page; the reading goes on. Nothing is taken over yet.";
  if (state === "loading") return "You may leave this page. The file is taken over wholly or not at all.";
  if (state === "interrupted") return "The server it ran on gave no sign of life. Nothing was taken over.";
  return note ?? "Nothing was taken over.";
}

function counted({ rows, rowsPerSecond }: ImportProgress): string {
  const pace = rowsPerSecond === null ? "" : `, ${plainNumber(rowsPerSecond)} a second`;
  return `${count(rows, "row")}${pace}`;
}

/** How far the reading or loading of a file is, with the way to stop it; or why it ended, with the way to try again. */
export function WorkProgress({
  batchId,
  progress,
}: {
  readonly batchId: string;
  readonly progress: ImportProgress;
}) {
  const router = useRouter();
  const [pending, start] = useTransition();
  const [reason, setReason] = useState("");
  const { state, share } = progress;
  const isAtWork = state === "reading" || state === "loading";

  useEffect(() => {
    if (!isAtWork) return;
    const clock = setInterval(() => router.refresh(), LOOK_AGAIN_MS);
    return () => clearInterval(clock);
  }, [isAtWork, router]);

  const act = (deed: typeof stopWork) =>
    start(async () => {
      const answer = await deed({ batchId });
      setReason(answer.ok ? "" : answer.error.reason);
      router.refresh();
    });
  return (
    <div role="status">
      <Notice kind={isAtWork ? "info" : "problem"} title={TITLES[state]}>
        {explain(progress)}
      </Notice>
      {isAtWork ? (
        <p className="flex flex-wrap items-center gap-3">
          <progress value={share} aria-label="Share of the file gone over" className="w-64" />
          <span className="tabular-nums">{counted(progress)}</span>
        </p>
      ) : null}
      <div className="my-3">
        <FormMessage kind="problem">{reason}</FormMessage>
      </div>
      <Button onClick={() => act(isAtWork ? stopWork : readOnceMore)} disabled={pending}>
        {isAtWork ? "Stop" : "Read it again"}
      </Button>
    </div>
  );
}
