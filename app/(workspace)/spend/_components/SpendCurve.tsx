"use client";

import {
  CartesianGrid,
  ComposedChart,
  Line,
  ReferenceLine,
  ResponsiveContainer,
  XAxis,
  YAxis,
} from "recharts";
import { money } from "@/lib/view/format";
import { roundTicks } from "@/lib/view/spanChart";
import type { SpendList } from "@/lib/view/spend";
import { inWords } from "@/lib/words/say";

const AXIS = { fill: "var(--ink-2)", fontSize: 13 } as const;
const HEIGHT = 260;

interface SpendCurveProps {
  readonly curve: SpendList["curve"];
  /** EUR. */
  readonly budget: number;
}

/** Loss avoided against money spent, beyond the budget too; the same numbers stand in the table of pieces. */
export function SpendCurve({ curve, budget }: SpendCurveProps) {
  const points = [{ spent: 0, avoided: 0 }, ...curve];
  const last = points.at(-1) ?? { spent: 0, avoided: 0 };
  const across = roundTicks(Math.max(last.spent, Math.min(budget, last.spent * 1.2)));
  const up = roundTicks(last.avoided);
  const ends = (ticks: readonly number[]): [number, number] => [0, ticks.at(-1) ?? 1];
  return (
    <figure className="my-3">
      <figcaption className="font-semibold">
        Loss avoided by money spent <span className="font-normal text-ink-2">(EUR)</span>
      </figcaption>
      <div style={{ height: HEIGHT }} aria-hidden="true">
        <ResponsiveContainer width="100%" height={HEIGHT} initialDimension={{ width: 720, height: HEIGHT }}>
          <ComposedChart
            data={points}
            margin={{ top: 18, right: 28, bottom: 0, left: 0 }}
            accessibilityLayer={false}
          >
            <CartesianGrid vertical={false} stroke="var(--rule)" />
            <XAxis
              dataKey="spent"
              type="number"
              domain={ends(across)}
              ticks={across}
              tickFormatter={money}
              tick={AXIS}
              tickLine={false}
              axisLine={{ stroke: "var(--ink)" }}
            />
            <YAxis
              domain={ends(up)}
              ticks={up}
              tickFormatter={money}
              tick={AXIS}
              tickLine={false}
              axisLine={false}
              width={72}
            />
            {budget <= (across.at(-1) ?? 0) ? (
              <ReferenceLine
                x={budget}
                stroke="var(--ink)"
                strokeDasharray="2 3"
                label={{ value: inWords(`budget ${money(budget)}`), position: "top", ...AXIS }}
              />
            ) : null}
            <Line
              dataKey="avoided"
              name="Loss avoided"
              type="linear"
              stroke="var(--money-5)"
              strokeWidth={2}
              dot={false}
              isAnimationActive={false}
            />
          </ComposedChart>
        </ResponsiveContainer>
      </div>
      <p className="text-ink-2 text-sm">
        The line goes on to one and a half times the budget: it shows what a little more or less money would
        do.
      </p>
    </figure>
  );
}
