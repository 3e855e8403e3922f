import { KeyFigure } from "@/app/_ui/KeyFigure";
import { KeyFigures } from "@/app/_ui/KeyFigures";
import type { Scope } from "@/lib/retrofit/scope/buildScope";
import { money, moneyRange } from "@/lib/view/format";
import { type FittedWindow, fitWords, normWords } from "@/lib/view/lineScope";
import { count, plainNumber } from "@/lib/view/number";

interface ScopeFiguresProps {
  readonly scope: Scope;
  readonly window: FittedWindow | null;
  readonly showsAmounts: boolean;
}

const FITS = { fits: "fits", short: "does not fit", unknown: "not known" } as const;

/** Money, time, window and size of a scope. */
export function ScopeFigures({ scope, window, showsAmounts }: ScopeFiguresProps) {
  const { counts, money: cost, schedule, rings } = scope;
  const [low, typical, high] = cost.cost;
  return (
    <KeyFigures>
      {showsAmounts ? (
        <KeyFigure
          label="Cost"
          value={money(typical)}
          span={`${moneyRange({ low, mean: typical, high })}, ends of common practice`}
          href="#money"
          assumed
        />
      ) : null}
      <KeyFigure
        label="From start to close"
        value={plainNumber(schedule.total[1] / 5)}
        unit="weeks"
        span={`${plainNumber(schedule.total[0] / 5)}–${plainNumber(schedule.total[2] / 5)} weeks`}
        href="#tasks"
        assumed
      />
      <KeyFigure
        label="Window"
        value={window === null ? "none on record" : FITS[window.fit.state]}
        href="#window"
      >
        {window === null ? "No window is on record." : fitWords(scope, window)}
      </KeyFigure>
      <KeyFigure
        label="Axes"
        value={plainNumber(counts.axes)}
        unit={`on ${count(counts.machines, "machine")}`}
      >
        {`${count(rings.length, "ring")} converted whole; controllers: ${normWords(counts.swapped)} to swap, ${normWords(counts.raised)} to raise; ${normWords(counts.racks)} I/O racks and ${count(counts.panels, "operator panel")} go too.`}
      </KeyFigure>
    </KeyFigures>
  );
}
