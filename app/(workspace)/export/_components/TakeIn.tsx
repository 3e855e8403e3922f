"use client";

import { FormMessage } from "@/app/_ui/FormMessage";
import { FileField } from "@/app/_ui/field/FileField";
import { SubmitButton } from "@/app/_ui/SubmitButton";
import { useSend } from "@/app/_ui/useSend";
import type { Refusal } from "@/lib/access/action";
import { err, type Result } from "@/lib/kernel/result";

const noAnswer: Refusal = {
  code: "impossible",
  reason: "The server did not answer. Look whether the copy was taken in before you send it again.",
};
const noFile: Refusal = {
  code: "invalid",
  reason: "Choose the archive first.",
  fields: { file: "Choose a file." },
};

async function save(data: FormData): Promise<Result<{ rows: number }, Refusal>> {
  const file = data.get("file");
  if (!(file instanceof File) || file.size === 0) return err(noFile);
  return fetch("/api/whole", { method: "POST", headers: { "Content-Type": "application/zip" }, body: file })
    .then((answer) => answer.json())
    .catch(() => err(noAnswer));
}

/** Fills an empty installation from an archive; everything on the page is then another. */
export function TakeIn() {
  const { pending, reason, send, errorOf } = useSend({
    save,
    onSaved: () => window.location.assign("/lines"),
  });
  return (
    <form
      onSubmit={send}
      className="my-4 grid max-w-xl gap-4 border border-rule-2 border-dashed p-4"
      noValidate
    >
      <FileField
        label="Archive of an installation"
        name="file"
        accept=".zip"
        hint="This installation is empty, so a copy can be taken in: all of it or nothing, checked against its manifest. You stay its administrator."
        error={errorOf("file")}
        required
      />
      <div>
        <SubmitButton pending={pending}>Take it in</SubmitButton>
      </div>
      <FormMessage kind="problem">{reason}</FormMessage>
    </form>
  );
}
