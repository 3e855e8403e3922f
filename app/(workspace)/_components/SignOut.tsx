"use client";

import { useState } from "react";
import { Button } from "@/app/_ui/Button";
import { countDrafts, dropAllDrafts } from "@/app/_ui/draft/keptDraft";
import { FormMessage } from "@/app/_ui/FormMessage";
import { forgetCard } from "@/app/_ui/keptCard";
import { count } from "@/lib/view/number";

const NO_ANSWER = "You are still signed in: Ebbline did not answer. Try again.";

/** Ends this session; the night card and what was typed and not sent go from this device, the latter after a question. */
export function SignOut() {
  const [problem, setProblem] = useState<string | null>(null);
  const [unsent, setUnsent] = useState(0);

  async function signOut() {
    const answer = await fetch("/api/auth/sign-out", {
      method: "POST",
      headers: { "content-type": "application/json" },
      body: "{}",
    }).catch(() => null);
    if (!answer?.ok) return setProblem(NO_ANSWER);
    dropAllDrafts();
    await forgetCard().catch(() => undefined);
    window.location.assign("/sign-in");
  }
  const ask = () => {
    const typed = countDrafts();
    if (typed === 0) void signOut();
    else setUnsent(typed);
  };

  return (
    <div className="grid gap-2">
      <FormMessage kind="problem">{problem}</FormMessage>
      {unsent === 0 ? (
        <Button onClick={ask}>Sign out</Button>
      ) : (
        <>
          <p role="alert">
            {count(unsent, "entry", "entries")} typed on this device and not sent would be lost.
          </p>
          <Button kind="danger" onClick={signOut}>
            Sign out and lose them
          </Button>
          <Button onClick={() => setUnsent(0)}>Stay signed in</Button>
        </>
      )}
    </div>
  );
}
