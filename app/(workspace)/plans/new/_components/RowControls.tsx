"use client";

import { type FormEvent, useState } from "react";
import { Button } from "@/app/_ui/Button";
import { useCut } from "@/app/(workspace)/plans/new/_components/CutAddress";
import { plainAmount, withCost, withPin } from "@/lib/view/planQuery";

interface RowControlsProps {
  readonly code: string;
  readonly pin: "in" | "out" | "none";
  readonly cost: number | null;
  readonly typed: boolean;
}

/** Pins a line by hand, or types what it costs; the cut is made again at once. */
export function RowControls({ code, pin, cost, typed }: RowControlsProps) {
  const { query, pending, show } = useCut();
  const [open, setOpen] = useState(false);
  const pinTo = (next: "in" | "out" | "none") => () => show(withPin(query, code, next));
  return (
    <div className="flex flex-wrap gap-1">
      {pin === "none" ? (
        <>
          <Button kind="quiet" aria-label={`Pin ${code} in`} aria-disabled={pending} onClick={pinTo("in")}>
            Pin in
          </Button>
          <Button kind="quiet" aria-label={`Pin ${code} out`} aria-disabled={pending} onClick={pinTo("out")}>
            Pin out
          </Button>
        </>
      ) : (
        <Button aria-label={`Free ${code}, pinned ${pin}`} aria-disabled={pending} onClick={pinTo("none")}>
          Unpin
        </Button>
      )}
      <Button
        kind="quiet"
        aria-label={`Type the cost of ${code}`}
        aria-expanded={open}
        onClick={() => setOpen(!open)}
      >
        Cost…
      </Button>
      {open ? <CostForm code={code} cost={cost} typed={typed} onDone={() => setOpen(false)} /> : null}
    </div>
  );
}

interface CostFormProps {
  readonly code: string;
  readonly cost: number | null;
  readonly typed: boolean;
  readonly onDone: () => void;
}

function CostForm({ code, cost, typed, onDone }: CostFormProps) {
  const { query, show } = useCut();
  const [problem, setProblem] = useState("");
  const send = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const amount = plainAmount(String(new FormData(event.currentTarget).get("cost") ?? ""));
    if (amount === null || amount <= 0) return setProblem("Write an amount above 0, such as 250000.");
    show(withCost(query, code, amount));
    onDone();
  };
  return (
    <form onSubmit={send} className="flex flex-wrap items-center gap-2">
      <input
        name="cost"
        className="input max-w-32 text-right"
        inputMode="decimal"
        aria-label={`Cost of ${code} in EUR`}
        aria-invalid={problem === "" ? undefined : true}
        defaultValue={cost === null ? "" : String(Math.round(cost))}
      />
      <Button type="submit">Use</Button>
      {typed ? (
        <Button
          kind="quiet"
          onClick={() => {
            show(withCost(query, code, null));
            onDone();
          }}
        >
          Back to the estimate
        </Button>
      ) : null}
      {problem === "" ? null : (
        <p role="alert" className="w-full text-sm">
          {problem}
        </p>
      )}
    </form>
  );
}
