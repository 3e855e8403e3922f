"use client";

import { useRouter } from "next/navigation";
import { type FormEvent, useState, useTransition } from "react";
import { FormMessage } from "@/app/_ui/FormMessage";
import { CheckboxField } from "@/app/_ui/field/CheckboxField";
import { SelectField } from "@/app/_ui/field/SelectField";
import { TextField } from "@/app/_ui/field/TextField";
import { SubmitButton } from "@/app/_ui/SubmitButton";
import { makeAccessKey } from "@/app/(workspace)/interface/actions";
import type { Refusal } from "@/lib/access/action";
import type { SiteName } from "@/lib/data/siteNames";
import { KEY_DAYS } from "@/lib/schema/accessKey";
import { KEY_WORDS, type KeyDeed } from "@/lib/view/accessKey";

interface KeyFormProps {
  readonly sites: readonly SiteName[];
  readonly deeds: readonly KeyDeed[];
  readonly onMade: (key: { readonly token: string; readonly name: string }) => void;
}

const DAYS = KEY_DAYS.map((days) => ({ value: String(days), label: `${days} days` }));

/** What a key is for, what it may, where and for how long. */
export function KeyForm({ sites, deeds, onMade }: KeyFormProps) {
  const router = useRouter();
  const [everywhere, setEverywhere] = useState(true);
  const [refusal, setRefusal] = useState<Refusal | null>(null);
  const [pending, start] = useTransition();
  const send = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const data = new FormData(event.currentTarget);
    start(async () => {
      const answer = await makeAccessKey({
        name: String(data.get("name") ?? ""),
        deeds: deeds.filter((deed) => data.get(deed) !== null),
        siteIds: everywhere ? null : sites.map(({ id }) => id).filter((id) => data.get(id) !== null),
        days: KEY_DAYS.find((days) => String(days) === data.get("days")) ?? KEY_DAYS[0],
      });
      setRefusal(answer.ok ? null : answer.error);
      if (!answer.ok) return;
      onMade(answer.value);
      router.refresh();
    });
  };
  const problem = (name: string) => refusal?.fields?.[name];
  return (
    <form noValidate onSubmit={send} className="grid gap-4">
      <TextField label="System it is for" name="name" required autoComplete="off" error={problem("name")} />
      <fieldset>
        <legend className="font-semibold text-[0.9375rem]">May</legend>
        {deeds.map((deed) => (
          <CheckboxField key={deed} label={KEY_WORDS[deed]} name={deed} defaultChecked={deed === "read"} />
        ))}
        <FormMessage kind="problem">{problem("deeds")}</FormMessage>
      </fieldset>
      <fieldset>
        <legend className="font-semibold text-[0.9375rem]">Where</legend>
        <CheckboxField
          label="Wherever I may, sites to come included"
          name="everywhere"
          checked={everywhere}
          onChange={(event) => setEverywhere(event.target.checked)}
        />
        {everywhere
          ? null
          : sites.map(({ id, code, name }) => <CheckboxField key={id} label={`${code} ${name}`} name={id} />)}
        <FormMessage kind="problem">{problem("siteIds")}</FormMessage>
      </fieldset>
      <SelectField label="Holds for" name="days" required choices={DAYS} defaultValue="90" />
      <FormMessage kind="problem">{refusal?.reason}</FormMessage>
      <div>
        <SubmitButton pending={pending} pendingText="Making the key…">
          Make the key
        </SubmitButton>
      </div>
    </form>
  );
}
