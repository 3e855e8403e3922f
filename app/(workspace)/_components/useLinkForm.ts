import { type FormEvent, useState, useTransition } from "react";
import type { Refusal } from "@/lib/access/action";
import type { Result } from "@/lib/kernel/result";

/** A one-time link as it comes from the server, which keeps nothing of it that opens. */
export interface Made {
  readonly link: string;
  readonly mailed: boolean;
}

/** What a form that asks for a one-time link needs: it sends, waits, shows why not, and in the end the link. */
export function useLinkForm(ask: (data: FormData) => Promise<Result<Made, Refusal>>) {
  const [refusal, setRefusal] = useState<Refusal | null>(null);
  const [made, setMade] = useState<Made | null>(null);
  const [pending, start] = useTransition();
  const send = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    setRefusal(null);
    const data = new FormData(event.currentTarget);
    start(async () => {
      const answer = await ask(data);
      if (answer.ok) setMade(answer.value);
      else setRefusal(answer.error);
    });
  };
  return { made, refusal, pending, send, problem: (name: string) => refusal?.fields?.[name] };
}
