"use client";

import { type FormEvent, useEffect, useState } from "react";
import { FormMessage } from "@/app/_ui/FormMessage";
import { TextField } from "@/app/_ui/field/TextField";
import { forgetCard } from "@/app/_ui/keptCard";
import { SubmitButton } from "@/app/_ui/SubmitButton";

const TOO_MANY = 429;

/** Asks for e-mail and password; a wrong pair gets one answer, whichever of the two is wrong. */
export function SignInForm({ target }: { readonly target: string }) {
  const [problem, setProblem] = useState<string | null>(null);
  const [pending, setPending] = useState(false);
  // Whoever stands here is signed out, by whichever way: a card kept for the last person goes.
  useEffect(() => {
    forgetCard().catch(() => undefined);
  }, []);

  async function signIn(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    setPending(true);
    setProblem(null);
    const said = await tryToSignIn(String(form.get("email")), String(form.get("password")));
    if (said === null) window.location.assign(target);
    else {
      setProblem(said);
      setPending(false);
    }
  }

  return (
    <form onSubmit={signIn} className="grid gap-4">
      <FormMessage kind="problem">{problem}</FormMessage>
      <TextField label="E-mail" name="email" type="email" autoComplete="username" required />
      <TextField label="Password" name="password" type="password" autoComplete="current-password" required />
      <div>
        <SubmitButton pending={pending} pendingText="Signing in…">
          Sign in
        </SubmitButton>
      </div>
    </form>
  );
}

/** What stands against it, or null when signed in. */
async function tryToSignIn(email: string, password: string): Promise<string | null> {
  try {
    const answer = await fetch("/api/auth/sign-in/email", {
      method: "POST",
      headers: { "content-type": "application/json" },
      body: JSON.stringify({ email, password }),
    });
    if (answer.ok) return null;
    if (answer.status === TOO_MANY) return "Too many attempts. Wait a minute, then try again.";
    if (answer.status < 500)
      return "This e-mail and password do not belong together, or the account is closed.";
    return "Ebbline could not check the password. Try again; if it stays so, tell who runs it.";
  } catch {
    return "Ebbline does not answer. Check the network, then try again.";
  }
}
