"use client";

import { useRouter, useSearchParams } from "next/navigation";
import { type DragEvent, useRef, useState, useTransition } from "react";
import { FormMessage } from "@/app/_ui/FormMessage";
import { FileField } from "@/app/_ui/field/FileField";
import { type Choice, SelectField } from "@/app/_ui/field/SelectField";
import { SubmitButton } from "@/app/_ui/SubmitButton";
import { handInFile } from "@/app/(workspace)/import/actions";
import type { Refusal } from "@/lib/access/action";
import { keepAsOf } from "@/lib/view/keepAsOf";

/** Hands in a file with the register it holds; picked or dropped. */
export function UploadForm({ choices }: { readonly choices: readonly Choice[] }) {
  const router = useRouter();
  const asOf = useSearchParams().get("asOf");
  const [pending, start] = useTransition();
  const [refusal, setRefusal] = useState<Refusal | null>(null);
  const [over, setOver] = useState(false);
  const form = useRef<HTMLFormElement>(null);

  const send = (data: FormData) =>
    start(async () => {
      const answer = await handInFile(data);
      if (answer.ok) router.push(keepAsOf(`/import/${answer.value.batchId}`, asOf));
      else setRefusal(answer.error);
    });

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
        send(new FormData(event.currentTarget));
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
          hint="Pick one or drop it here: .csv, .txt or .xlsx, up to 50 MB."
          error={refusal?.fields?.file}
          required
        />
      </div>
      <FormMessage kind="problem">{refusal?.reason}</FormMessage>
      <div>
        <SubmitButton pending={pending} pendingText="Reading the file…">
          Read the file
        </SubmitButton>
        <span className="ml-3 text-ink-2 text-sm">Nothing is taken over yet.</span>
      </div>
    </form>
  );
}
