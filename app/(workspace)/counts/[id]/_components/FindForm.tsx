"use client";

import { useRouter } from "next/navigation";
import { type FormEvent, useState, useTransition } from "react";
import { orOffline } from "@/app/_ui/draft/orOffline";
import { useDraft } from "@/app/_ui/draft/useDraft";
import { FormMessage } from "@/app/_ui/FormMessage";
import { TextField } from "@/app/_ui/field/TextField";
import { SubmitButton } from "@/app/_ui/SubmitButton";
import { EntryFields } from "@/app/(workspace)/counts/[id]/_components/EntryFields";
import { addThisFind } from "@/app/(workspace)/counts/actions";
import type { Refusal } from "@/lib/access/action";
import type { TypedCount } from "@/lib/schema/count";
import { blankCount } from "@/lib/view/count";

type TypedFind = TypedCount & { readonly plate: string; readonly bin: string; readonly revision: string };

const blank = {
  version: 0,
  entry: { ...blankCount("unproven"), originUnknown: true, plate: "", bin: "", revision: "" } as TypedFind,
};

/** Pieces nobody has on record: what the plate says, where they lie, and what they are like. */
export function FindForm({ countId }: { readonly countId: string }) {
  const router = useRouter();
  const { entry, type, clear } = useDraft<TypedFind>(`ebbline count find ${countId}`, blank);
  const [refusal, setRefusal] = useState<Refusal | null>(null);
  const [pending, start] = useTransition();
  const send = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const { plate, bin, revision, ...pieces } = entry;
    start(async () => {
      const made = await orOffline(addThisFind({ countId, plate, bin, revision, entry: pieces }));
      setRefusal(made.ok ? null : made.error);
      if (made.ok) clear({ ...blank, entry: { ...blank.entry, bin } });
      router.refresh();
    });
  };
  const errorOf = (name: string) => refusal?.fields?.[`entry.${name}`] ?? refusal?.fields?.[name];
  const text = (name: "plate" | "bin" | "revision") => ({
    name,
    value: entry[name],
    onChange: ({ target }: { target: { value: string } }) => type({ [name]: target.value }),
    error: errorOf(name),
  });
  return (
    <form aria-label="Pieces found without a record" noValidate onSubmit={send} className="no-print">
      <div className="grid gap-4 sm:grid-cols-2 lg:grid-cols-4">
        <TextField
          {...text("plate")}
          label="Number on the plate"
          hint="A plate nobody knows stays on the sheet until somebody does."
          required
        />
        <TextField {...text("bin")} label="Where it lies" hint="Bin or cupboard" required />
        <TextField {...text("revision")} label="Revision" />
        <EntryFields entry={entry} type={type} errorOf={errorOf} />
      </div>
      <div className="mt-3">
        <FormMessage kind="problem">{refusal?.reason}</FormMessage>
        <SubmitButton kind="plain" pending={pending}>
          Put it on the sheet
        </SubmitButton>
      </div>
    </form>
  );
}
