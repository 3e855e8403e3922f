"use client";

import { type FormEvent, useState } from "react";
import { FormMessage } from "@/app/_ui/FormMessage";
import { TextField } from "@/app/_ui/field/TextField";
import { SubmitButton } from "@/app/_ui/SubmitButton";

interface DoorFormProps {
  readonly label: string;
  readonly kind: "password" | "code";
  readonly button: string;
  readonly danger?: boolean;
  /** Said while the answer is waited for. */
  readonly pendingText?: string;
  /** @returns what stands against it, or null. */
  readonly run: (entered: string) => Promise<string | null>;
}

/** One field that the sign-in asks for, and the button that sends it. */
export function DoorForm({
  label,
  kind,
  button,
  danger = false,
  pendingText = "Saving…",
  run,
}: DoorFormProps) {
  const [problem, setProblem] = useState<string | null>(null);
  const [pending, setPending] = useState(false);

  async function submit(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    const form = event.currentTarget;
    setPending(true);
    const said = await run(String(new FormData(form).get("entered")));
    setProblem(said);
    setPending(false);
    if (said === null) form.reset();
  }

  const isCode = kind === "code";
  return (
    <form onSubmit={submit} className="mt-3 grid max-w-[27rem] gap-4">
      <FormMessage kind="problem">{problem}</FormMessage>
      <TextField
        label={label}
        name="entered"
        type={isCode ? "text" : "password"}
        autoComplete={isCode ? "one-time-code" : "current-password"}
        required
      />
      <div>
        <SubmitButton {...{ pending, pendingText }} kind={danger ? "danger" : "primary"}>
          {button}
        </SubmitButton>
      </div>
    </form>
  );
}
