import type { ReactNode } from "react";
import { FormMessage } from "@/app/_ui/FormMessage";
import { SubmitButton } from "@/app/_ui/SubmitButton";
import { useSend } from "@/app/_ui/useSend";
import type { Refusal } from "@/lib/access/action";
import type { Result } from "@/lib/kernel/result";

interface EntryFormProps<Saved> {
  readonly submit: string;
  /** Saves what stands in the fields, each given by its name; an empty text is nothing entered. */
  readonly save: (text: (name: string) => string) => Promise<Result<Saved, Refusal>>;
  readonly onSaved: (saved: Saved) => void;
  /** The fields, given what was refused of each. */
  readonly children: (errorOf: (name: string) => string | undefined) => ReactNode;
}

/** A form that sends, waits, and says what was refused; what is typed stays. */
export function EntryForm<Saved>({ submit, save, onSaved, children }: EntryFormProps<Saved>) {
  const { pending, reason, send, errorOf } = useSend<Saved>({
    save: (data) => save((name) => String(data.get(name) ?? "").trim()),
    onSaved,
  });
  return (
    <form noValidate className="grid gap-4" onSubmit={send}>
      {children(errorOf)}
      <FormMessage kind="problem">{reason}</FormMessage>
      <div>
        <SubmitButton pending={pending}>{submit}</SubmitButton>
      </div>
    </form>
  );
}
