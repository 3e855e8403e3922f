"use client";

import { useRouter, useSearchParams } from "next/navigation";
import { useState, useTransition } from "react";
import { Button } from "@/app/_ui/Button";
import { FormMessage } from "@/app/_ui/FormMessage";
import { startThisProject } from "@/app/(workspace)/plans/actions";
import { keepAsOf } from "@/lib/view/keepAsOf";

interface StartProjectProps {
  readonly planLineId: string;
  readonly code: string;
}

/** Starts the project of a funded line and goes there. */
export function StartProject({ planLineId, code }: StartProjectProps) {
  const router = useRouter();
  const asOf = useSearchParams().get("asOf");
  const [pending, start] = useTransition();
  const [problem, setProblem] = useState("");
  const begin = () =>
    start(async () => {
      const started = await startThisProject({ planLineId });
      if (!started.ok) return setProblem(started.error.reason);
      router.push(keepAsOf(`/projects/${started.value.code}`, asOf));
    });
  return (
    <>
      <Button aria-label={`Start a project for ${code}`} aria-disabled={pending} onClick={begin}>
        {pending ? "Starting…" : "Start a project"}
      </Button>
      <FormMessage kind="problem">{problem}</FormMessage>
    </>
  );
}
