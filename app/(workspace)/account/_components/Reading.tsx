"use client";

import { useState, useTransition } from "react";
import { FormMessage } from "@/app/_ui/FormMessage";
import { SelectField } from "@/app/_ui/field/SelectField";
import { setMyReading } from "@/app/(workspace)/account/actions";
import type { SetReading } from "@/lib/schema/reading";

const LANGUAGES = [
  { value: "en", label: "English" },
  { value: "de", label: "Deutsch" },
];

/** Each style by an example of itself. */
const NUMBERS = [
  { value: "space-point", label: "1\u202f234.5" },
  { value: "space-comma", label: "1\u202f234,5" },
  { value: "point-comma", label: "1.234,5" },
];

/** The language and the marks of numbers this person reads, on every device they sign in from. */
export function Reading({ reading }: { readonly reading: SetReading }) {
  const [pending, start] = useTransition();
  const [problem, setProblem] = useState<string | null>(null);
  const choose = (field: keyof SetReading, value: string) =>
    start(async () => {
      const wanted = { ...reading, [field]: value === "" ? null : value };
      const answer = await setMyReading(wanted);
      // A whole new page, since every word on this one is in the language of before.
      if (answer.ok) window.location.assign("/api/reading?device&next=/account");
      else setProblem(answer.error.reason);
    });
  return (
    <>
      <div className="flex flex-wrap items-end gap-3">
        <SelectField
          name="language"
          label="Language"
          empty="As the device"
          choices={LANGUAGES}
          value={reading.language ?? ""}
          disabled={pending}
          onChange={({ target: { value } }) => choose("language", value)}
        />
        <SelectField
          name="numbers"
          label="Numbers"
          empty="As usual in the language"
          choices={NUMBERS}
          value={reading.numbers ?? ""}
          disabled={pending}
          onChange={({ target: { value } }) => choose("numbers", value)}
        />
      </div>
      <FormMessage kind="problem">{problem}</FormMessage>
    </>
  );
}
