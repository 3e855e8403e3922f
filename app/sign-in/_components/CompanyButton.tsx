"use client";

import { useState } from "react";
import { Button } from "@/app/_ui/Button";
import { askDoor } from "@/app/_ui/door/askDoor";
import { FormMessage } from "@/app/_ui/FormMessage";

interface CompanyButtonProps {
  /** What the company calls its sign-in. */
  readonly name: string;
  readonly provider: string;
  readonly target: string;
}

/** Leads to the company's own sign-in, which sends the person back. */
export function CompanyButton({ name, provider, target }: CompanyButtonProps) {
  const [problem, setProblem] = useState<string | null>(null);
  const go = async () => {
    const wanted = { provider, callbackURL: target, errorCallbackURL: "/sign-in?company=refused" };
    const answer = await askDoor<{ url: string }>("sign-in/social", wanted, "It cannot be reached now.");
    if ("problem" in answer) setProblem(answer.problem);
    else window.location.assign(answer.value.url);
  };
  return (
    <div className="grid gap-3 border-rule border-t pt-4">
      <FormMessage kind="problem">{problem}</FormMessage>
      <div>
        <Button onClick={go}>Sign in with {name}</Button>
      </div>
    </div>
  );
}
