import { CheckboxField } from "@/app/_ui/field/CheckboxField";
import { SelectField } from "@/app/_ui/field/SelectField";
import { TextareaField } from "@/app/_ui/field/TextareaField";
import { TextField } from "@/app/_ui/field/TextField";
import { MomentField } from "@/app/(workspace)/events/new/_components/MomentField";
import type { Refusal } from "@/lib/access/action";
import { eventKinds } from "@/lib/view/eventCapture";

const AT_HAND = [
  { value: "yes", label: "Yes, a usable one at the site" },
  { value: "no", label: "No" },
] as const;

/** What the event was, when, and how long the line stood for it. */
export function WhatHappened({ refusal }: { readonly refusal: Refusal | null }) {
  const fields = refusal?.fields;
  return (
    <>
      <SelectField name="kind" label="What happened" required choices={eventKinds} error={fields?.kind} />
      <MomentField error={fields?.happenedAt} />
      <SelectField name="spareAtHand" label="Was a spare at hand?" empty="Not known" choices={AT_HAND} />
      <TextField name="downtimeHours" label="Hours the line stood" error={fields?.downtimeHours} />
      <TextField name="logisticHours" label="Of these, waiting for an item" error={fields?.logisticHours} />
      <TextareaField name="text" label="What was seen" error={fields?.text} />
      {fields?.sure ? <CheckboxField name="sure" label="It is another event: keep it all the same" /> : null}
    </>
  );
}
