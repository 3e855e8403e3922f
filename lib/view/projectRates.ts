import type { IsoDate } from "@/lib/kernel/isoDate";
import { type Amount, toEur } from "@/lib/kernel/money";
import { exactMoney } from "@/lib/view/format";
import { day } from "@/lib/view/time";

/** Units of a currency for one EUR, as somebody stated it. */
export interface StatedRate {
  readonly currency: string;
  readonly perEuro: string;
  /** First day it holds: of the budget rate, or of the month. */
  readonly on: IsoDate;
  readonly source: string;
}

export interface RateTable {
  readonly budget: readonly StatedRate[];
  /** Newest month first. */
  readonly months: readonly StatedRate[];
  readonly mayState: boolean;
}

/** A total in another currency, with the rate it was turned at. */
export interface TurnedTotal {
  readonly label: string;
  readonly amount: string;
  readonly rate: string;
  readonly source: string;
}

/** The month whose rate stands beside the budget rate: the newest that is not after the day. */
export function monthRateOn({ months }: RateTable, currency: string, asOf: IsoDate): StatedRate | null {
  return months.find((one) => one.currency === currency && one.on <= asOf) ?? null;
}

/** The same amount in euros at the budget rate and at the month's; none for a project kept in euros. */
export function inEuros(
  amount: Amount,
  { table, currency, asOf }: { readonly table: RateTable; readonly currency: string; readonly asOf: IsoDate },
): TurnedTotal[] {
  if (currency === "EUR") return [];
  const turned = (label: string, rate: StatedRate | null | undefined): TurnedTotal[] =>
    rate
      ? [
          {
            label,
            amount: exactMoney(toEur(amount, rate.perEuro)),
            rate: `${rate.perEuro} ${currency} for one euro, from ${day(rate.on)}`,
            source: rate.source,
          },
        ]
      : [];
  return [
    ...turned(
      "at the budget rate",
      table.budget.find((one) => one.currency === currency),
    ),
    ...turned("at the month's rate", monthRateOn(table, currency, asOf)),
  ];
}
