import { type FormEvent, useState, useTransition } from "react";
import type { Refusal } from "@/lib/access/action";
import type { Result } from "@/lib/kernel/result";

interface Sending<Saved> {
  readonly save: (data: FormData) => Promise<Result<Saved, Refusal>>;
  /** Gets what was answered, and the form as it was sent. */
  readonly onSaved: (saved: Saved, data: FormData) => void;
}

/** Sends a form, waits for the answer, and keeps what was refused until it is sent again. */
export function useSend<Saved>({ save, onSaved }: Sending<Saved>) {
  const [pending, start] = useTransition();
  const [refusal, setRefusal] = useState<Refusal | null>(null);
  const send = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    if (pending) return;
    setRefusal(null);
    const data = new FormData(event.currentTarget);
    start(async () => {
      const answer = await save(data);
      if (answer.ok) onSaved(answer.value, data);
      else setRefusal(answer.error);
    });
  };
  /** What was refused of a field; a change names its fields under what is wanted. */
  const errorOf = (name: string) => refusal?.fields?.[name] ?? refusal?.fields?.[`wanted.${name}`];
  return { pending, reason: refusal?.reason, send, errorOf, forget: () => setRefusal(null) };
}
