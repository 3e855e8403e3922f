"use client";

import { useRouter } from "next/navigation";
import { type FormEvent, useState, useTransition } from "react";
import { FormMessage } from "@/app/_ui/FormMessage";
import { CheckboxField } from "@/app/_ui/field/CheckboxField";
import { SelectField } from "@/app/_ui/field/SelectField";
import { TextField } from "@/app/_ui/field/TextField";
import { SubmitButton } from "@/app/_ui/SubmitButton";
import { makeWebhook } from "@/app/(workspace)/interface/actions";
import type { Refusal } from "@/lib/access/action";
import type { SiteName } from "@/lib/data/siteNames";
import { SUBJECT_KEYS, SUBJECTS } from "@/lib/schema/webhook";

interface WebhookFormProps {
  readonly sites: readonly SiteName[];
  readonly onMade: (secret: string) => void;
}

/** Which system is told of what. */
export function WebhookForm({ sites, onMade }: WebhookFormProps) {
  const router = useRouter();
  const [refusal, setRefusal] = useState<Refusal | null>(null);
  const [pending, start] = useTransition();
  const send = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const data = new FormData(event.currentTarget);
    const text = (name: string) => String(data.get(name) ?? "");
    start(async () => {
      const answer = await makeWebhook({
        name: text("name"),
        address: text("address").trim(),
        subjects: SUBJECT_KEYS.filter((key) => data.get(key) !== null),
        siteId: text("siteId") === "" ? null : text("siteId"),
      });
      setRefusal(answer.ok ? null : answer.error);
      if (!answer.ok) return;
      onMade(answer.value.secret);
      router.refresh();
    });
  };
  const problem = (name: string) => refusal?.fields?.[name];
  return (
    <form noValidate onSubmit={send} className="grid gap-4">
      <TextField label="System" name="name" required autoComplete="off" error={problem("name")} />
      <TextField
        label="Address"
        name="address"
        type="url"
        required
        autoComplete="off"
        hint="Begins with https. Addresses inside the company must be allowed by whoever runs Ebbline."
        error={problem("address")}
      />
      <fieldset>
        <legend className="font-semibold text-[0.9375rem]">Told when</legend>
        <div className="grid gap-x-6 sm:grid-cols-2">
          {SUBJECT_KEYS.map((key) => (
            <CheckboxField key={key} label={SUBJECTS[key].label} name={key} />
          ))}
        </div>
        <FormMessage kind="problem">{problem("subjects")}</FormMessage>
      </fieldset>
      <SelectField
        label="At"
        name="siteId"
        empty="All sites"
        choices={sites.map(({ id, code, name }) => ({ value: id, label: `${code} ${name}` }))}
        hint="A change that belongs to no one site, such as a loaded file, is told to systems of all sites alone."
      />
      <FormMessage kind="problem">{refusal?.reason}</FormMessage>
      <div>
        <SubmitButton pending={pending} pendingText="Looking at the address…">
          Add the system
        </SubmitButton>
      </div>
    </form>
  );
}
