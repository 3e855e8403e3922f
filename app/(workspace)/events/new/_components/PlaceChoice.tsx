"use client";

import { useRouter, useSearchParams } from "next/navigation";
import { SelectField } from "@/app/_ui/field/SelectField";
import { type EventPlaces, placeWords } from "@/lib/view/eventCapture";
import { keepAsOf } from "@/lib/view/keepAsOf";

interface PlaceChoiceProps {
  readonly places: EventPlaces;
  readonly chosen: Readonly<Record<"line" | "machine" | "position", string>>;
}

/** Line, then machine, then place; each choice is in the address, so it can be linked and gone back from. */
export function PlaceChoice({ places, chosen }: PlaceChoiceProps) {
  const router = useRouter();
  const asOf = useSearchParams().get("asOf");
  const go = (next: Partial<PlaceChoiceProps["chosen"]>) => {
    const query = new URLSearchParams(Object.entries(next).filter(([, value]) => value !== ""));
    router.push(keepAsOf(`/events/new?${query}`, asOf));
  };
  const named = (list: EventPlaces["lines"]) =>
    list.map(({ code, name }) => ({ value: code, label: `${code} ${name}` }));
  return (
    <div className="grid gap-4 sm:grid-cols-3">
      <SelectField
        name="line"
        label="Line"
        required
        empty="Choose a line"
        choices={named(places.lines)}
        value={chosen.line}
        onChange={({ target }) => go({ line: target.value })}
      />
      <SelectField
        name="machine"
        label="Machine"
        required
        empty={chosen.line === "" ? "Choose the line first" : "Choose a machine"}
        choices={named(places.machines)}
        value={chosen.machine}
        onChange={({ target }) => go({ line: chosen.line, machine: target.value })}
      />
      <SelectField
        name="position"
        label="Place"
        required
        empty={chosen.machine === "" ? "Choose the machine first" : "Choose a place"}
        choices={places.places.map((place) => ({ value: place.id, label: placeWords(place) }))}
        value={chosen.position}
        onChange={({ target }) => go({ line: chosen.line, machine: chosen.machine, position: target.value })}
      />
    </div>
  );
}
