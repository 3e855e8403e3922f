"use client";

import { useState } from "react";
import { Delta } from "@/app/_ui/Delta";
import { KeyFigure } from "@/app/_ui/KeyFigure";
import { KeyFigures } from "@/app/_ui/KeyFigures";
import { money, moneyRange } from "@/lib/view/format";

interface WorthFiguresProps {
  readonly version: number;
  readonly worth: number;
  readonly net: number;
  readonly spent: number;
  readonly span: { readonly low: number; readonly mean: number; readonly high: number };
  readonly lossWithout: number;
  readonly lossWith: number;
  readonly broken: number;
}

/** What a plan is worth and costs, with what the last change did to it. */
export function WorthFigures(now: WorthFiguresProps) {
  const [seen, setSeen] = useState({ now, before: null as WorthFiguresProps | null });
  if (seen.now.version !== now.version) setSeen({ now, before: seen.now });
  const { before } = seen;
  return (
    <KeyFigures>
      <KeyFigure label="Less loss by the plan" value={money(now.worth)} unit="over its years">
        <Change by={before && now.worth - before.worth} good="more" />
      </KeyFigure>
      <KeyFigure label="After the money spent" value={money(now.net)}>
        <Change by={before && now.net - before.net} good="more" />
      </KeyFigure>
      <KeyFigure
        label="Spent, estimated"
        value={money(now.spent)}
        span={`${moneyRange(now.span)} with every cost at one end`}
      >
        <Change by={before && now.spent - before.spent} good="less" />
      </KeyFigure>
      <KeyFigure
        label="Loss of the group with the plan"
        value={money(now.lossWith)}
        span={`${money(now.lossWithout)} without it`}
      />
      <KeyFigure label="Limits broken" value={String(now.broken)}>
        {before && before.broken !== now.broken ? (
          <Delta
            kind={now.broken < before.broken ? "better" : "worse"}
            text={`${before.broken} before the last change`}
          />
        ) : null}
      </KeyFigure>
    </KeyFigures>
  );
}

function Change({ by, good }: { readonly by: number | null; readonly good: "more" | "less" }) {
  if (by === null || Math.abs(by) < 1) return null;
  const better = good === "more" ? by > 0 : by < 0;
  return (
    <Delta
      kind={better ? "better" : "worse"}
      text={`${money(Math.abs(by))} ${by > 0 ? "more" : "less"} by the last change`}
    />
  );
}
