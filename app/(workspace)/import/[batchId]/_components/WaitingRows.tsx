"use client";

import { useRouter } from "next/navigation";
import { useState, useTransition } from "react";
import { AsOfLink } from "@/app/_ui/AsOfLink";
import { Button } from "@/app/_ui/Button";
import { FormMessage } from "@/app/_ui/FormMessage";
import { takeUpRows } from "@/app/(workspace)/import/actions";
import type { LoadedImport } from "@/lib/view/importView";
import { count } from "@/lib/view/number";
import { moment } from "@/lib/view/time";

type Props = Pick<LoadedImport, "waiting" | "rests"> & { readonly batchId: string };

/** Rows of a loaded file that only what was stored kept out, and the way to try them once more. */
export function WaitingRows({ batchId, waiting, rests }: Props) {
  const router = useRouter();
  const [pending, start] = useTransition();
  const [reason, setReason] = useState("");
  if (waiting === 0) return null;
  const takeUp = () =>
    start(async () => {
      const answer = await takeUpRows({ batchId });
      if (answer.ok) router.push(`/import/${answer.value.batchId}`);
      else setReason(answer.error.reason);
    });
  return (
    <div className="mb-6 border-rule-2 border-l-4 py-1 pl-4">
      <p className="measure">
        {count(waiting, "row")} of this file read well and stood against what was stored; the reasons are
        below. Once they are cured, the rows can be taken in from the file as it was handed in.
      </p>
      {rests.map(({ id, state, at }) => (
        <p key={id}>
          <AsOfLink href={`/import/${id}`}>
            Taken up on {moment(at, "UTC")} UTC: {state === "committed" ? "loaded" : state}
          </AsOfLink>
        </p>
      ))}
      <div className="my-2">
        <FormMessage kind="problem">{reason}</FormMessage>
      </div>
      <Button onClick={takeUp} disabled={pending}>
        Take up {count(waiting, "waiting row")}
      </Button>
    </div>
  );
}
