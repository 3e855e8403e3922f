import { type ReactNode, useState, useTransition } from "react";
import { FormMessage } from "@/app/_ui/FormMessage";
import { SubmitButton } from "@/app/_ui/SubmitButton";
import type { Refusal } from "@/lib/access/action";
import type { Result } from "@/lib/kernel/result";

interface EntryFormProps {
  readonly submit: string;
  /** Saves what stands in the fields, each given by its name. */
  readonly save: (text: (name: string) => string) => Promise<Result<{ readonly id: string }, Refusal>>;
  readonly onSaved: (id: string) => void;
  /** The fields, given what was refused of each. */
  readonly children: (errors: Readonly<Record<string, string | undefined>>) => ReactNode;
}

/** A form of the night card's entries: sends, waits, and says what was refused. */
export function EntryForm({ submit, save, onSaved, children }: EntryFormProps) {
  const [pending, start] = useTransition();
  const [refusal, setRefusal] = useState<Refusal | null>(null);
  const send = (data: FormData) =>
    start(async () => {
      const answer = await save((name) => String(data.get(name) ?? "").trim());
      if (answer.ok) onSaved(answer.value.id);
      else setRefusal(answer.error);
    });
  return (
    <form
      noValidate
      className="grid gap-4"
      onSubmit={(event) => {
        event.preventDefault();
        setRefusal(null);
        send(new FormData(event.currentTarget));
      }}
    >
      {children(refusal?.fields ?? {})}
      <FormMessage kind="problem">{refusal?.reason}</FormMessage>
      <div>
        <SubmitButton pending={pending}>{submit}</SubmitButton>
      </div>
    </form>
  );
}
