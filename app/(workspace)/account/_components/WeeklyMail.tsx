"use client";

import { useRouter } from "next/navigation";
import { useState, useTransition } from "react";
import { Button } from "@/app/_ui/Button";
import { FormMessage } from "@/app/_ui/FormMessage";
import { SelectField } from "@/app/_ui/field/SelectField";
import { askMyDigest, setMyDigest } from "@/app/(workspace)/account/actions";
import type { DigestState } from "@/lib/data/digest";
import { digestStateWords, digestTraceWords } from "@/lib/view/digestTrace";

interface WeeklyMailProps {
  readonly digest: DigestState;
  readonly sites: readonly { readonly id: string; readonly code: string; readonly name: string }[];
  /** Zone of the server, whose clock the sendings are told by. */
  readonly zone: string;
}

/** Whether the person gets the week's mail and of which site; what became of the last ones. */
export function WeeklyMail({ digest, sites, zone }: WeeklyMailProps) {
  const router = useRouter();
  const [pending, start] = useTransition();
  const [said, setSaid] = useState<{ readonly done: boolean; readonly text: string } | null>(null);
  const run = (change: () => ReturnType<typeof askMyDigest>, text: string) =>
    start(async () => {
      const answer = await change();
      setSaid(answer.ok ? { done: true, text } : { done: false, text: answer.error.reason });
      router.refresh();
    });
  return (
    <>
      <p className="measure mb-3">{digestStateWords(digest)}</p>
      <div className="flex flex-wrap items-end gap-3">
        <SelectField
          name="digestSite"
          label="Mail of"
          empty="No mail"
          choices={sites.map(({ id, code, name }) => ({ value: id, label: `${code} ${name}` }))}
          value={digest.siteId ?? ""}
          onChange={({ target: { value } }) =>
            run(
              () => setMyDigest({ siteId: value === "" ? null : value }),
              value === "" ? "No mail is sent any more." : "Saved.",
            )
          }
        />
        {digest.siteId === null ? null : (
          <Button
            disabled={pending}
            onClick={() => run(() => askMyDigest({}), "Asked for; look at its state below in a moment.")}
          >
            Send me one now
          </Button>
        )}
      </div>
      <FormMessage kind="done">{said?.done ? said.text : null}</FormMessage>
      <FormMessage kind="problem">{said && !said.done ? said.text : null}</FormMessage>
      {digest.mails.length === 0 ? null : (
        <ul className="mt-3 list-disc pl-5">
          {digest.mails.map((mail) => (
            <li key={mail.id}>{digestTraceWords(mail, zone)}</li>
          ))}
        </ul>
      )}
    </>
  );
}
