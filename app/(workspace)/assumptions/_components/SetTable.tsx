"use client";

import { AsOfLink } from "@/app/_ui/AsOfLink";
import { UndoBar } from "@/app/_ui/UndoBar";
import { ChooseButton } from "@/app/(workspace)/assumptions/_components/ChooseButton";
import { type Choose, useSetChoice } from "@/app/(workspace)/assumptions/_components/useSetChoice";
import type { AssumptionEffect, AssumptionEffects } from "@/lib/data/assumptionEffect";
import { assumptionKindName } from "@/lib/view/assumptionSet";
import { money, moneyRange } from "@/lib/view/format";
import { count } from "@/lib/view/number";

interface SetTableProps {
  readonly effects: AssumptionEffects;
  readonly mayChange: boolean;
}

/** What the money would be under each set, and the choice of the one in use. */
export function SetTable({ effects, mayChange }: SetTableProps) {
  const { message, choose, undo, close } = useSetChoice();
  const { sets, lines, linesWithoutMoney } = effects;
  const bar = undo ? { message, onUndo: undo, onClose: close } : { message, onClose: close };
  return (
    <>
      <div className="overflow-x-auto">
        <table className="table">
          <caption className="sr-only">Stop loss under each set of assumptions</caption>
          <thead>
            <tr>
              <th scope="col">Set</th>
              <th scope="col" data-align="end">
                Stop loss, EUR a year
              </th>
              <th scope="col">Lines that lose most</th>
              <th scope="col">In use</th>
            </tr>
          </thead>
          <tbody>
            {sets.map((set) => (
              <tr key={`${set.kind} ${set.version}`}>
                <th scope="row">
                  {assumptionKindName(set.kind)}, version {set.version}
                </th>
                <td data-align="end">
                  {money(set.stopLoss.mean)}
                  <span className="block text-ink-2 text-sm">{moneyRange(set.stopLoss)}</span>
                </td>
                <td>
                  <TopLines lines={set.lines} />
                </td>
                <td>
                  <InUse {...{ set, mayChange }} onChoose={choose} />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p className="mt-2 text-ink-2 text-sm">
        Over {count(lines, "line")} you may see
        {linesWithoutMoney === 0 ? "" : `; ${linesWithoutMoney} of them have no cost per hour and no money`}.
        Span: all rates at their 5 % and 95 % points; the sets themselves are not a span.
      </p>
      <UndoBar {...bar} />
    </>
  );
}

function TopLines({ lines }: { readonly lines: AssumptionEffect["lines"] }) {
  return (
    <ol className="list-decimal pl-5 text-sm">
      {lines.map(({ code, stopLoss }) => (
        <li key={code}>
          <AsOfLink href={`/lines/${code}`}>{code}</AsOfLink> {money(stopLoss.mean)}{" "}
          <span className="text-ink-2">({moneyRange(stopLoss)})</span>
        </li>
      ))}
    </ol>
  );
}

interface InUseProps {
  readonly set: AssumptionEffect;
  readonly mayChange: boolean;
  readonly onChoose: Choose;
}

function InUse({ set, mayChange, onChoose }: InUseProps) {
  if (set.inUse) return <strong>in use</strong>;
  return mayChange ? <ChooseButton choice={set} onChoose={onChoose} /> : <span>no</span>;
}
