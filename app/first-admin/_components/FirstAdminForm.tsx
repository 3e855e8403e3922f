"use client";

import { type FormEvent, useState } from "react";
import { FormMessage } from "@/app/_ui/FormMessage";
import { TextField } from "@/app/_ui/field/TextField";
import { SubmitButton } from "@/app/_ui/SubmitButton";

interface Refused {
  readonly reason: string;
  readonly fields?: Readonly<Record<string, string>>;
}

/** Makes the first account; afterwards its holder signs in with it. */
export function FirstAdminForm({ token }: { readonly token: string }) {
  const [refused, setRefused] = useState<Refused | null>(null);
  const [pending, setPending] = useState(false);

  async function make(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    const form = Object.fromEntries(new FormData(event.currentTarget));
    setPending(true);
    const said = await askForAccount({ token, ...form });
    if (said === null) window.location.assign("/sign-in");
    else {
      setRefused(said);
      setPending(false);
    }
  }

  return (
    <form onSubmit={make} className="grid gap-4">
      <FormMessage kind="problem">{refused?.reason}</FormMessage>
      <TextField label="Name" name="name" autoComplete="name" required error={refused?.fields?.name} />
      <TextField
        label="E-mail"
        name="email"
        type="email"
        autoComplete="username"
        required
        error={refused?.fields?.email}
      />
      <TextField
        label="Password"
        name="password"
        type="password"
        autoComplete="new-password"
        hint="At least 12 characters."
        required
        error={refused?.fields?.password}
      />
      <div>
        <SubmitButton pending={pending} pendingText="Making the account…">
          Make the account
        </SubmitButton>
      </div>
    </form>
  );
}

/** What stands against it, or null when the account is made. */
async function askForAccount(input: Readonly<Record<string, unknown>>): Promise<Refused | null> {
  try {
    const answer = await fetch("/api/first-admin", {
      method: "POST",
      headers: { "content-type": "application/json" },
      body: JSON.stringify(input),
    });
    const said = (await answer.json()) as { readonly ok: boolean; readonly error?: Refused };
    return said.ok ? null : (said.error ?? { reason: "The account was not made." });
  } catch {
    return { reason: "Ebbline does not answer. Check the network, then try again." };
  }
}
