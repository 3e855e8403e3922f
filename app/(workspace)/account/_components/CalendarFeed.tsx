"use client";

import { useRouter } from "next/navigation";
import { useState, useTransition } from "react";
import { Button } from "@/app/_ui/Button";
import { FormMessage } from "@/app/_ui/FormMessage";
import { dropMyCalendar, makeMyCalendar } from "@/app/(workspace)/account/actions";
import { day } from "@/lib/view/time";

/** The secret address of the person's calendar: made, shown once, taken back. */
export function CalendarFeed({ since }: { readonly since: string | null }) {
  const router = useRouter();
  const [pending, start] = useTransition();
  const [address, setAddress] = useState<string | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const make = () =>
    start(async () => {
      const made = await makeMyCalendar({});
      setAddress(made.ok ? made.value.address : null);
      setProblem(made.ok ? null : made.error.reason);
      router.refresh();
    });
  const drop = () =>
    start(async () => {
      const dropped = await dropMyCalendar({});
      setAddress(null);
      setProblem(dropped.ok ? null : dropped.error.reason);
      router.refresh();
    });
  return (
    <>
      <p className="measure">
        {since === null
          ? "You have no calendar address yet."
          : `Your calendar address works since ${day(since.slice(0, 10))}.`}{" "}
        Whoever has the address reads the dates of your sites, so treat it as a password.
      </p>
      <FormMessage kind="problem">{problem}</FormMessage>
      <FormMessage kind="done">
        {address === null ? null : (
          <>
            Shown this once: <code className="break-all">{address}</code>
          </>
        )}
      </FormMessage>
      <div className="mt-3 flex flex-wrap gap-2">
        <Button onClick={make} disabled={pending}>
          {since === null ? "Make a calendar address" : "Make a new one; the old one stops"}
        </Button>
        {since === null ? null : (
          <Button kind="danger" onClick={drop} disabled={pending}>
            Take it back
          </Button>
        )}
      </div>
    </>
  );
}
