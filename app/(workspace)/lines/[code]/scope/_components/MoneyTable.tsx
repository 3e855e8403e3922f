import { Derivation, type DerivationStep } from "@/app/_ui/Derivation";
import { KeyFigure } from "@/app/_ui/KeyFigure";
import { KeyFigures } from "@/app/_ui/KeyFigures";
import type { MoneyRow, ScopeMoney } from "@/lib/retrofit/scope/scopeMoney";
import type { ScopeNorms } from "@/lib/retrofit/scope/scopeNorms";
import { money, moneyRange } from "@/lib/view/format";
import { moneyNorm, normWords } from "@/lib/view/lineScope";
import { plainNumber } from "@/lib/view/number";
import { day } from "@/lib/view/time";

interface MoneyTableProps {
  readonly money: ScopeMoney;
  readonly norms: ScopeNorms;
  readonly showsAmounts: boolean;
}

/** Person-hours and money with every product opened; the hours alone where amounts are not shown. */
export function MoneyTable({ money: sums, norms, showsAmounts }: MoneyTableProps) {
  const shown = sums.rows.filter(
    ({ quantity, kind }) => quantity[2] > 0 && (showsAmounts || kind === "hours"),
  );
  return (
    <>
      <KeyFigures>
        <KeyFigure
          label="Person-hours"
          value={plainNumber(sums.hours[1])}
          unit="h"
          span={`${plainNumber(sums.hours[0])}–${plainNumber(sums.hours[2])} h`}
          assumed
        />
        {showsAmounts ? <Amounts sums={sums} /> : null}
      </KeyFigures>
      <Derivation
        title={showsAmounts ? "How hours and money are worked out" : "How hours are worked out"}
        steps={[...shown.map(stepOf), ...(showsAmounts ? costSteps(sums, norms) : [])]}
      >
        All low, all typical or all high together. Only drives take their list price: the norm of a controller
        holds its licences, those of racks and panels their wiring and screens. Not in it: product lost in the
        window and while it ramps up, travel, price rises, learning from machine to machine. A motor nobody
        has judged counts as an adapter in the typical case and as a motor to be sized in the high one. The
        plan counts motors out of supply instead, so its estimate differs.
      </Derivation>
    </>
  );
}

function Amounts({ sums }: { readonly sums: ScopeMoney }) {
  const [low, typical, high] = sums.cost;
  return (
    <>
      <KeyFigure label="Goods" value={money(sums.goods[1])} span={range(sums.goods)} assumed />
      <KeyFigure
        label="Cost with contingency"
        value={money(typical)}
        span={`${moneyRange({ low, mean: typical, high })}; three-point mean ${money(sums.mean)}`}
        assumed
      />
    </>
  );
}

function costSteps(sums: ScopeMoney, { spans: { hourlyRate, contingency } }: ScopeNorms): DerivationStep[] {
  return [
    {
      label: "Labour",
      formula: `${normWords(sums.hours)} h × ${normWords(hourlyRate)} EUR/h`,
      value: moneyNorm(sums.labour),
      source: "norm",
    },
    {
      label: "Cost",
      formula: `(labour + goods ${moneyNorm(sums.goods)}) × (1 + ${normWords(contingency, 2)})`,
      value: moneyNorm(sums.cost),
      source: "norm",
    },
  ];
}

const range = ([low, mean, high]: ScopeMoney["cost"]) => moneyRange({ low, mean, high });

function stepOf({ label, kind, quantity, each, total, source, pricedOn }: MoneyRow): DerivationStep {
  const unit = kind === "hours" ? "h" : "EUR";
  return {
    label,
    formula: `${normWords(quantity)} × ${normWords(each, 1)} ${unit}`,
    value: kind === "hours" ? `${normWords(total)} h` : moneyNorm(total),
    source: source === "norm" ? "norm" : `list price, ${day(pricedOn)}`,
  };
}
