"use client";

import { useRouter } from "next/navigation";
import { type FormEvent, useState, useTransition } from "react";
import { FormMessage } from "@/app/_ui/FormMessage";
import { Section } from "@/app/_ui/Section";
import { SubmitButton } from "@/app/_ui/SubmitButton";
import { UndoBar } from "@/app/_ui/UndoBar";
import { keepThisEvent, takeThisEventBack } from "@/app/(workspace)/events/actions";
import { UnitFields } from "@/app/(workspace)/events/new/_components/UnitFields";
import { WhatHappened } from "@/app/(workspace)/events/new/_components/WhatHappened";
import type { Refusal } from "@/lib/access/action";
import type { TypedEvent } from "@/lib/schema/event";
import { type EventPlace, placeWords, type SpareLot } from "@/lib/view/eventCapture";

interface EventFormProps {
  readonly line: string;
  readonly place: EventPlace;
  readonly spares: readonly SpareLot[];
}

type Kept = { readonly eventId: string; readonly reference: string };

function readForm(form: HTMLFormElement, positionId: string): TypedEvent {
  const data = new FormData(form);
  const text = (name: string) => String(data.get(name) ?? "");
  return {
    ...{ positionId, sure: data.get("sure") === "on" },
    kind: text("kind") as TypedEvent["kind"],
    unitOut: text("unitOut") as TypedEvent["unitOut"],
    spareAtHand: text("spareAtHand") as TypedEvent["spareAtHand"],
    ...{ happenedAt: text("happenedAt"), downtimeHours: text("downtimeHours"), text: text("text") },
    ...{ logisticHours: text("logisticHours"), binOut: text("binOut"), lotId: text("lotId") },
    ...{ serialIn: text("serialIn"), revisionIn: text("revisionIn") },
  };
}

/** The event at one place; kept at once, and taken back in one step while nobody built on it. */
export function EventForm({ line, place, spares }: EventFormProps) {
  const router = useRouter();
  const [pending, start] = useTransition();
  const [refusal, setRefusal] = useState<Refusal | null>(null);
  const [kept, setKept] = useState<Kept | null>(null);
  const send = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = event.currentTarget;
    start(async () => {
      const made = await keepThisEvent(readForm(form, place.id));
      setRefusal(made.ok ? null : made.error);
      if (!made.ok) return;
      setKept(made.value);
      form.reset();
      router.refresh();
    });
  };
  const undo = async () => {
    if (!kept) return;
    const back = await takeThisEventBack({ eventId: kept.eventId });
    setRefusal(back.ok ? null : back.error);
    if (back.ok) setKept(null);
    router.refresh();
  };
  return (
    <Section title={`${line} ${placeWords(place)}`}>
      <FormMessage kind="problem">{refusal?.reason}</FormMessage>
      <form
        onSubmit={send}
        noValidate
        aria-label="Event"
        className="grid gap-4 sm:grid-cols-2 lg:grid-cols-3"
      >
        <WhatHappened refusal={refusal} />
        <UnitFields refusal={refusal} place={place} spares={spares} />
        <div className="grid content-end">
          <SubmitButton kind="primary" pending={pending}>
            Keep this event
          </SubmitButton>
        </div>
      </form>
      <UndoBar
        message={kept ? `Event ${kept.reference} kept.` : null}
        onUndo={undo}
        onClose={() => setKept(null)}
      />
    </Section>
  );
}
