"use client";

import { useState } from "react";
import { Button } from "@/app/_ui/Button";
import { FormMessage } from "@/app/_ui/FormMessage";
import { forgetCard } from "@/app/_ui/keptCard";

/** Ends this session; the night card kept on this device goes with it. */
export function SignOut() {
  const [problem, setProblem] = useState<string | null>(null);

  async function signOut() {
    await forgetCard().catch(() => undefined);
    const answer = await fetch("/api/auth/sign-out", {
      method: "POST",
      headers: { "content-type": "application/json" },
      body: "{}",
    }).catch(() => null);
    if (answer?.ok) window.location.assign("/sign-in");
    else setProblem("You are still signed in: Ebbline did not answer. Try again.");
  }

  return (
    <div className="grid gap-2">
      <FormMessage kind="problem">{problem}</FormMessage>
      <Button onClick={signOut}>Sign out</Button>
    </div>
  );
}
