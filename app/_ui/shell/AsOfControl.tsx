"use client";

import { usePathname, useRouter, useSearchParams } from "next/navigation";
import { type FormEvent, useState } from "react";
import { Dialog, DialogTrigger, Button as Trigger } from "react-aria-components";
import { Button } from "@/app/_ui/Button";
import { DateField } from "@/app/_ui/field/DateField";
import { HeaderPopover } from "@/app/_ui/shell/HeaderPopover";
import { KnownForm } from "@/app/_ui/shell/KnownForm";
import { isIsoDate } from "@/lib/kernel/isoDate";
import { day } from "@/lib/view/time";

/** The day every page looks at; always shown, plainly different when it is not today. */
export function AsOfControl({ today }: { readonly today: string }) {
  const [open, setOpen] = useState(false);
  const router = useRouter();
  const pathname = usePathname();
  const params = useSearchParams();
  const asked = params.get("asOf");
  const asOf = asked !== null && isIsoDate(asked) ? asked : today;

  const look = (date: string) => {
    const next = new URLSearchParams(params);
    if (date === today) next.delete("asOf");
    else next.set("asOf", date);
    setOpen(false);
    router.push(next.size === 0 ? pathname : `${pathname}?${next}`);
  };
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const date = new FormData(event.currentTarget).get("asOf");
    if (typeof date === "string" && isIsoDate(date)) look(date);
  };

  return (
    <DialogTrigger isOpen={open} onOpenChange={setOpen}>
      <Trigger className={`button ${asOf === today ? "" : "border-2 border-ink"}`} data-kind="plain">
        <span className="label">As of</span>
        <time dateTime={asOf}>{day(asOf)}</time>
        {asOf === today ? null : <span className="text-ink-2 max-sm:hidden">not today</span>}
      </Trigger>
      <HeaderPopover>
        <Dialog className="grid gap-3 p-4 outline-none" aria-label="Look at another day">
          <form onSubmit={submit} className="grid gap-3">
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
          {asOf === today ? null : <Button onClick={() => look(today)}>Back to today</Button>}
          <KnownForm latest={today} done={() => setOpen(false)} />
        </Dialog>
      </HeaderPopover>
    </DialogTrigger>
  );
}
