"use client";

import {
  Area,
  CartesianGrid,
  ComposedChart,
  Line,
  ReferenceLine,
  ResponsiveContainer,
  XAxis,
  YAxis,
} from "recharts";
import { ChartKey } from "@/app/_ui/chart/ChartKey";
import { ChartNumbers } from "@/app/_ui/chart/ChartNumbers";
import { LOOKS } from "@/app/_ui/chart/chartLooks";
import { exactNumber } from "@/lib/view/number";
import type { ChartLine, SpanChart } from "@/lib/view/spanChart";
import { inWords } from "@/lib/words/say";

interface LineSpanChartProps {
  /** Finished model from `lib/view`. */
  readonly chart: SpanChart;
  /** Pixels. */
  readonly height?: number;
  /** Show the numbers at once instead of behind a disclosure. */
  readonly numbersOpen?: boolean;
}

const AXIS = { fill: "var(--ink-2)", fontSize: 13 } as const;

function draw(line: ChartLine) {
  const { stroke, dash, width } = LOOKS[line.look];
  return (
    <Line
      key={line.key}
      dataKey={`values.${line.key}`}
      name={line.name}
      stroke={stroke}
      strokeWidth={width}
      {...(dash === undefined ? {} : { strokeDasharray: dash })}
      dot={false}
      type="linear"
      connectNulls={false}
      isAnimationActive={false}
    />
  );
}

/** Lines over a band of uncertainty, with the same numbers in a table under it. */
export function LineSpanChart({ chart, height = 260, numbersOpen = false }: LineSpanChartProps) {
  const { title, unit, lines, points, domain, ticks, marks, bandName } = chart;
  return (
    <figure className="my-3">
      <figcaption>
        <span className="font-semibold">{title}</span> <span className="text-ink-2">({unit})</span>
        <ChartKey lines={lines} bandName={bandName} />
      </figcaption>
      <div style={{ height }} aria-hidden="true">
        <ResponsiveContainer width="100%" height={height} initialDimension={{ width: 720, height }}>
          <ComposedChart
            data={[...points]}
            margin={{ top: 18, right: 20, bottom: 0, left: 0 }}
            accessibilityLayer={false}
          >
            <CartesianGrid vertical={false} stroke="var(--rule)" />
            <XAxis
              dataKey="label"
              tick={AXIS}
              tickLine={false}
              axisLine={{ stroke: "var(--ink)" }}
              minTickGap={28}
            />
            <YAxis
              domain={[...domain]}
              ticks={[...ticks]}
              tickFormatter={exactNumber}
              tick={AXIS}
              tickLine={false}
              axisLine={false}
              width={44}
            />
            {bandName === null ? null : (
              <Area
                dataKey="band"
                name={bandName}
                stroke="none"
                fill="var(--money-2)"
                fillOpacity={0.6}
                connectNulls={false}
                isAnimationActive={false}
              />
            )}
            {marks.map(({ at, label }) => (
              <ReferenceLine
                key={label}
                x={at}
                stroke="var(--ink)"
                strokeDasharray="2 3"
                label={{ value: inWords(label), position: "top", ...AXIS }}
              />
            ))}
            {lines.map(draw)}
          </ComposedChart>
        </ResponsiveContainer>
      </div>
      <ChartNumbers chart={chart} open={numbersOpen} />
    </figure>
  );
}
