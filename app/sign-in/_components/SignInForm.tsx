"use client";

import { type FormEvent, useEffect, useState } from "react";
import { askDoor } from "@/app/_ui/door/askDoor";
import { FormMessage } from "@/app/_ui/FormMessage";
import { TextField } from "@/app/_ui/field/TextField";
import { forgetCard } from "@/app/_ui/keptCard";
import { SubmitButton } from "@/app/_ui/SubmitButton";
import { CodeStep } from "@/app/sign-in/_components/CodeStep";

const WRONG = "This e-mail and password do not belong together, or the account is closed.";

/** Asks for e-mail and password; a wrong pair gets one answer, whichever of the two is wrong. */
export function SignInForm({ target }: { readonly target: string }) {
  const [problem, setProblem] = useState<string | null>(null);
  const [pending, setPending] = useState(false);
  const [needsCode, setNeedsCode] = useState(false);
  // Whoever stands here is signed out, by whichever way: a card kept for the last person goes.
  useEffect(() => {
    forgetCard().catch(() => undefined);
  }, []);
  const goOn = () => window.location.assign(target);

  async function signIn(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    setPending(true);
    setProblem(null);
    const pair = { email: String(form.get("email")), password: String(form.get("password")) };
    const answer = await askDoor<{ twoFactorRedirect?: boolean }>("sign-in/email", pair, WRONG);
    if ("value" in answer && !answer.value.twoFactorRedirect) return goOn();
    if ("problem" in answer) setProblem(answer.problem);
    else setNeedsCode(true);
    setPending(false);
  }

  if (needsCode) return <CodeStep onDone={goOn} />;
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
