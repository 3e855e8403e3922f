"use client";

import { usePathname, useRouter, useSearchParams } from "next/navigation";
import type { FormEvent } from "react";
import { Button } from "@/app/_ui/Button";
import { DateField } from "@/app/_ui/field/DateField";
import { KnownForm } from "@/app/_ui/shell/KnownForm";
import { PopoverButton } from "@/app/_ui/shell/PopoverButton";
import { isIsoDate } from "@/lib/kernel/isoDate";
import { day } from "@/lib/view/time";

interface AsOfControlProps {
  readonly today: string;
  /** Zone whose midnight ends the day of a look back. */
  readonly zone: string;
}

/** The day every page looks at; always shown, plainly different when it is not today. */
export function AsOfControl({ today, zone }: AsOfControlProps) {
  const router = useRouter();
  const pathname = usePathname();
  const params = useSearchParams();
  const asked = params.get("asOf");
  const asOf = asked !== null && isIsoDate(asked) ? asked : today;

  const look = (date: string, close: () => void) => {
    const next = new URLSearchParams(params);
    if (date === today) next.delete("asOf");
    else next.set("asOf", date);
    close();
    router.push(next.size === 0 ? pathname : `${pathname}?${next}`);
  };
  const submit = (event: FormEvent<HTMLFormElement>, close: () => void) => {
    event.preventDefault();
    const date = new FormData(event.currentTarget).get("asOf");
    if (typeof date === "string" && isIsoDate(date)) look(date, close);
  };

  return (
    <PopoverButton
      button={
        <>
          <span className="label">As of</span>
          <time dateTime={asOf}>{day(asOf)}</time>
          {asOf === today ? null : <span className="text-ink-2 max-sm:hidden">not today</span>}
        </>
      }
      buttonClass={asOf === today ? "" : "border-2 border-ink"}
      label="Look at another day"
      panelClass="grid gap-3 p-4"
    >
      {(close) => (
        <>
          <form onSubmit={(event) => submit(event, close)} className="grid gap-3">
            <DateField
              label="Look at another day"
              name="asOf"
              required
              defaultValue={asOf}
              hint="Dates, stages and chances are worked out for this day."
            />
            <Button type="submit" kind="primary">
              Show this day
            </Button>
          </form>
          {asOf === today ? null : <Button onClick={() => look(today, close)}>Back to today</Button>}
          <KnownForm latest={today} zone={zone} done={close} />
        </>
      )}
    </PopoverButton>
  );
}
