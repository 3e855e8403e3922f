"use client";

import { useRouter, useSearchParams } from "next/navigation";
import { useState, useTransition } from "react";
import type { Refusal } from "@/lib/access/action";
import type { Result } from "@/lib/kernel/result";
import { keepAsOf } from "@/lib/view/keepAsOf";

export interface Change<T> {
  readonly run: () => Promise<Result<T, Refusal>>;
  /** Said when it is done, also of what was made; empty says nothing. */
  readonly done: string | ((made: T) => string);
  /** Takes it back. */
  readonly undo?: (made: T) => Promise<Result<unknown, Refusal>>;
  readonly after?: () => void;
  /** Page to go to when it is done, instead of reading this one again. */
  readonly goTo?: string;
}

interface Done {
  readonly message: string;
  readonly undo: (() => Promise<Result<unknown, Refusal>>) | null;
}

/** Runs changes of a project one at a time, says what was refused or done, and how to take it back. */
export function useProjectChange() {
  const router = useRouter();
  const asOf = useSearchParams().get("asOf");
  const [pending, start] = useTransition();
  const [refusal, setRefusal] = useState<Refusal | null>(null);
  const [done, setDone] = useState<Done | null>(null);
  const finish = <T>({ done: said, undo, after, goTo }: Change<T>, made: T) => {
    const message = typeof said === "string" ? said : said(made);
    setDone(message === "" ? null : { message, undo: undo ? () => undo(made) : null });
    after?.();
    if (goTo) router.push(keepAsOf(goTo, asOf));
    else router.refresh();
  };
  const run = <T>(change: Change<T>) =>
    start(async () => {
      const made = await change.run();
      setRefusal(made.ok ? null : made.error);
      if (made.ok) finish(change, made.value);
    });
  const undo = async () => {
    const back = await done?.undo?.();
    if (back && !back.ok) setRefusal(back.error);
    router.refresh();
  };
  /** Says what was done by a form of its own. */
  const tell = (said: Done) => {
    setDone(said);
    router.refresh();
  };
  return { pending, refusal, done, run, undo, tell, close: () => setDone(null) };
}
