"use client";

import { useRouter, useSearchParams } from "next/navigation";
import { type DragEvent, useRef, useState } from "react";
import { Button } from "@/app/_ui/Button";
import { FormMessage } from "@/app/_ui/FormMessage";
import { FileField } from "@/app/_ui/field/FileField";
import { type Choice, SelectField } from "@/app/_ui/field/SelectField";
import { SubmitButton } from "@/app/_ui/SubmitButton";
import type { Refusal } from "@/lib/access/action";
import type { FileLimits } from "@/lib/schema/registerFile";
import { keepAsOf } from "@/lib/view/keepAsOf";
import { plainNumber } from "@/lib/view/number";
import { handedIn, type Sending, sendFile } from "./sendFile";

interface Props {
  readonly choices: readonly Choice[];
  readonly limits: FileLimits;
}

const MEBIBYTE = 1024 * 1024;

/** Hands in a file with the register it holds; picked or dropped. The bytes go as they are read from the disk. */
export function UploadForm({ choices, limits }: Props) {
  const router = useRouter();
  const asOf = useSearchParams().get("asOf");
  const [refusal, setRefusal] = useState<Refusal | null>(null);
  const [sending, setSending] = useState<Sending | null>(null);
  const [share, setShare] = useState(0);
  const [over, setOver] = useState(false);
  const form = useRef<HTMLFormElement>(null);

  const send = async (data: FormData) => {
    const found = handedIn(data, limits);
    if (!found.ok) return setRefusal(found.error);
    setShare(0);
    const started = sendFile(found.value, setShare);
    setSending(started);
    const answer = await started.answer;
    setSending(null);
    if (answer.ok) router.push(keepAsOf(`/import/${answer.value.batchId}`, asOf));
    else setRefusal(answer.error);
  };

  const drop = (event: DragEvent) => {
    event.preventDefault();
    setOver(false);
    const input = form.current?.elements.namedItem("file");
    if (input instanceof HTMLInputElement) input.files = event.dataTransfer.files;
  };

  return (
    <form
      ref={form}
      onSubmit={(event) => {
        event.preventDefault();
        setRefusal(null);
        void send(new FormData(event.currentTarget));
      }}
      onDragOver={(event) => {
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={drop}
      className={`grid max-w-3xl gap-4 border border-dashed p-4 ${over ? "border-accent bg-accent-soft" : "border-rule-2"}`}
      noValidate
    >
      <div className="grid gap-4 sm:grid-cols-2">
        <SelectField
          label="Register it holds"
          name="register"
          choices={choices}
          empty="Choose a register"
          error={refusal?.fields?.register}
          required
        />
        <FileField
          label="File"
          name="file"
          accept=".csv,.txt,.xlsx"
          hint={`Pick one or drop it here: .csv or .txt up to ${plainNumber(limits.text / MEBIBYTE)} MB, .xlsx up to ${plainNumber(limits.workbook / MEBIBYTE)} MB.`}
          error={refusal?.fields?.file}
          required
        />
      </div>
      <FormMessage kind="problem">{refusal?.reason}</FormMessage>
      <div>
        <SubmitButton
          pending={sending !== null}
          pendingText={share < 1 ? "Sending the file…" : "Opening the file…"}
        >
          Read the file
        </SubmitButton>
        {sending ? (
          <span className="ml-3 inline-flex items-center gap-3">
            <progress value={share} aria-label="Share of the file sent" />
            <Button onClick={sending.stop}>Stop</Button>
          </span>
        ) : null}
        <span className="ml-3 text-ink-2 text-sm">Nothing is taken over yet.</span>
      </div>
    </form>
  );
}
