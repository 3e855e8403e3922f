"use client";

import { type FormEvent, useState } from "react";
import { askDoor } from "@/app/_ui/door/askDoor";
import { FormMessage } from "@/app/_ui/FormMessage";
import { TextField } from "@/app/_ui/field/TextField";
import { SubmitButton } from "@/app/_ui/SubmitButton";

const MINIMUM = 12;

interface Answer {
  readonly kind: "problem" | "done";
  readonly text: string;
}

/** Sets a new password and ends the person's other sessions. */
export function ChangePassword() {
  const [answer, setAnswer] = useState<Answer | null>(null);
  const [pending, setPending] = useState(false);

  async function submit(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    const form = event.currentTarget;
    const entered = new FormData(form);
    setPending(true);
    const said = await change(String(entered.get("current")), String(entered.get("wanted")));
    if (said.kind === "done") form.reset();
    setAnswer(said);
    setPending(false);
  }

  return (
    <form onSubmit={submit} className="grid max-w-[27rem] gap-4">
      <FormMessage kind={answer?.kind ?? "done"}>{answer?.text}</FormMessage>
      <TextField
        label="Password now"
        name="current"
        type="password"
        autoComplete="current-password"
        required
      />
      <TextField
        label="New password"
        name="wanted"
        type="password"
        autoComplete="new-password"
        hint={`At least ${MINIMUM} characters. Other places where you are signed in are signed out.`}
        required
      />
      <div>
        <SubmitButton pending={pending}>Change the password</SubmitButton>
      </div>
    </form>
  );
}

async function change(currentPassword: string, newPassword: string): Promise<Answer> {
  if (newPassword.length < MINIMUM)
    return {
      kind: "problem",
      text: `The new password has ${newPassword.length} characters; use at least ${MINIMUM}.`,
    };
  const answer = await askDoor(
    "change-password",
    { currentPassword, newPassword, revokeOtherSessions: true },
    "The password now is not right. Nothing was changed.",
  );
  return "problem" in answer
    ? { kind: "problem", text: answer.problem }
    : { kind: "done", text: "The password is changed." };
}
