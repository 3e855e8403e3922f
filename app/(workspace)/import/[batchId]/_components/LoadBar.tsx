"use client";

import { useRouter } from "next/navigation";
import { useState, useTransition } from "react";
import { Button } from "@/app/_ui/Button";
import { FormMessage } from "@/app/_ui/FormMessage";
import { dropFile, loadFile } from "@/app/(workspace)/import/actions";
import type { PreviewTotals } from "@/lib/view/importPreview";
import { count, plainNumber } from "@/lib/view/number";
import { useStagedState } from "./StagedState";

interface Props {
  readonly batchId: string;
  readonly totals: PreviewTotals;
  readonly leftOut: readonly number[];
  readonly loadable: number;
  /** Of the rows with an error, those that only what is stored keeps out. */
  readonly waiting: number;
  readonly missing: readonly string[];
  readonly openQuestions: number;
  /** Things that would be added or changed. */
  readonly writes: number;
}

/** Why the file cannot be loaded as it stands; null when it can. */
function hindranceOf(props: Props, isUnread: boolean): string | null {
  if (isUnread) return "Your choices above were not read yet: press “Read again” first.";
  if (props.openQuestions > 0) return "Answer the question above first: the file can be read in two ways.";
  if (props.missing.length > 0) return props.missing.join(" ");
  return props.loadable === 0 ? "No row is left to load." : null;
}

/** What loading would take, and the button that does it. */
export function LoadBar(props: Props) {
  const { batchId, totals, leftOut, loadable, waiting, writes } = props;
  const router = useRouter();
  const { isUnread, isCounting } = useStagedState();
  const [pending, start] = useTransition();
  const [reason, setReason] = useState("");
  const hindrance = hindranceOf(props, isUnread);
  const load = () =>
    start(async () => {
      const answer = await loadFile({ batchId, leftOut: [...leftOut] });
      if (answer.ok) router.refresh();
      else setReason(answer.error.reason);
    });
  const drop = () =>
    start(async () => {
      const answer = await dropFile({ batchId });
      if (answer.ok) router.push("/import");
      else setReason(answer.error.reason);
    });
  return (
    <>
      <p className="measure">
        {count(totals.rows, "row")}: {plainNumber(totals.ok)} fine, {plainNumber(totals.warning)} to look at,{" "}
        {plainNumber(totals.error)} with an error, which stay out
        {leftOut.length > 0 ? `, ${plainNumber(leftOut.length)} left out by you` : ""}. Loading adds or
        changes {count(writes, "thing")}, all together or none.
        {waiting > 0
          ? ` ${count(waiting, "row")} of those that stay out read well and stand against what is stored: once that is cured they can be taken in from the page of this file.`
          : ""}
      </p>
      {hindrance === null ? null : (
        <p className="mt-2 border-ink border-l-4 pl-3 font-semibold">{hindrance}</p>
      )}
      <div className="my-3">
        <FormMessage kind="problem">{reason}</FormMessage>
      </div>
      <div className="flex flex-wrap gap-2">
        <Button kind="primary" onClick={load} disabled={pending || isCounting || hindrance !== null}>
          {pending ? "Working…" : `Load ${count(loadable, "row")}`}
        </Button>
        <Button onClick={drop} disabled={pending}>
          Drop this file
        </Button>
      </div>
    </>
  );
}
