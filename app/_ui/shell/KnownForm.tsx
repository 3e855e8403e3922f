"use client";

import { usePathname, useRouter, useSearchParams } from "next/navigation";
import { type FormEvent, useId } from "react";
import { Button } from "@/app/_ui/Button";
import { DateField } from "@/app/_ui/field/DateField";
import { describedBy, FieldFrame } from "@/app/_ui/field/FieldFrame";
import { KNOWN, knownMinute, looksBack, readKnownAt } from "@/lib/view/knownAt";

const HINT = "Left empty, the whole day counts.";

interface KnownFormProps {
  readonly latest: string;
  /** Zone whose midnight ends the day, and whose clock shows the minute. */
  readonly zone: string;
  readonly done: () => void;
}

/** Asks how far back to look; the day and the minute go into the address, so that it can be sent to somebody. */
export function KnownForm({ latest, zone, done }: KnownFormProps) {
  const router = useRouter();
  const pathname = usePathname();
  const params = useSearchParams();
  const time = useId();
  const now = readKnownAt(params.get(KNOWN));
  if (!looksBack(pathname)) return null;
  const by = now?.zone ?? zone;
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    const minute = String(form.get("minute") ?? "");
    const known = readKnownAt(`${form.get("day")}${minute === "" ? "" : `T${minute}`}_${by}`);
    if (known === null) return;
    const next = new URLSearchParams(params);
    next.delete("asOf");
    next.set(KNOWN, known.text);
    done();
    router.push(`${pathname}?${next}`);
  };
  return (
    <form onSubmit={submit} className="grid gap-3 border-rule-2 border-t pt-3">
      <DateField
        label="As known on"
        name="day"
        required
        defaultValue={now?.day ?? latest}
        hint="Shows what was on record on that day, and nothing recorded later."
      />
      <FieldFrame id={time} label={`Until (${by})`} hint={HINT} required={false}>
        <input
          {...describedBy(time, { hint: HINT })}
          name="minute"
          type="time"
          className="input max-w-56"
          defaultValue={now === null ? "" : knownMinute(now)}
        />
      </FieldFrame>
      <Button type="submit">Look back</Button>
    </form>
  );
}
