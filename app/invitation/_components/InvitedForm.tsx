"use client";

import { type FormEvent, useState } from "react";
import { Button } from "@/app/_ui/Button";
import { FormMessage } from "@/app/_ui/FormMessage";
import { TextField } from "@/app/_ui/field/TextField";
import { SubmitButton } from "@/app/_ui/SubmitButton";

interface Refused {
  readonly reason: string;
  readonly fields?: Readonly<Record<string, string>>;
}

interface InvitedFormProps {
  readonly token: string;
  /** What the company calls its own sign-in; null is none. */
  readonly company: string | null;
}

/** Makes the account of the invited, or gives somebody a new password; both then sign in with it. */
export function InvitedForm({ token, company }: InvitedFormProps) {
  const [refused, setRefused] = useState<Refused | null>(null);
  const [pending, setPending] = useState(false);
  const accept = async (password: string | null) => {
    setPending(true);
    const said = await askForAccount({ token, password });
    if (said === null) window.location.assign("/sign-in");
    else {
      setRefused(said);
      setPending(false);
    }
  };
  const send = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    void accept(String(new FormData(event.currentTarget).get("password") ?? ""));
  };
  return (
    <form onSubmit={send} noValidate className="grid gap-4">
      <FormMessage kind="problem">{refused?.reason}</FormMessage>
      <TextField
        label="Password"
        name="password"
        type="password"
        autoComplete="new-password"
        hint="At least 12 characters."
        required
        error={refused?.fields?.password}
      />
      <div className="flex flex-wrap gap-2">
        <SubmitButton pending={pending} pendingText="Setting the password…">
          Set the password
        </SubmitButton>
        {company === null ? null : (
          <Button aria-disabled={pending} onClick={() => void accept(null)}>
            Use {company} instead
          </Button>
        )}
      </div>
    </form>
  );
}

/** What stands against it, or null when the account is made. */
async function askForAccount(input: object): Promise<Refused | null> {
  try {
    const answer = await fetch("/api/invitation", {
      method: "POST",
      headers: { "content-type": "application/json" },
      body: JSON.stringify(input),
    });
    const said = (await answer.json()) as { readonly ok: boolean; readonly error?: Refused };
    return said.ok ? null : (said.error ?? { reason: "The password was not set." });
  } catch {
    return { reason: "Ebbline does not answer. Check the network, then try again." };
  }
}
