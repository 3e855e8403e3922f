import type { BuyDocument } from "@/lib/view/buyDocument";

/** Columns of the file of a sheet; a date is text here, as there is none but the day it stands for. */
export const BUY_COLUMNS = [
  { title: "Case", kind: "text" },
  { title: "Part or group", kind: "text" },
  { title: "Units in service", kind: "number" },
  { title: "Unit-years until they leave", kind: "number" },
  { title: "Unit-years nothing makes good", kind: "number" },
  { title: "Removals per unit-year", kind: "number" },
  { title: "Shape of the rate", kind: "number" },
  { title: "Weight of the rate, unit-years", kind: "number" },
  { title: "Needed on average", kind: "number" },
  { title: "Usable now", kind: "number" },
  { title: "One too few, EUR", kind: "number" },
  { title: "One too many, EUR", kind: "number" },
  { title: "Level aimed at", kind: "number" },
  { title: "Buy", kind: "number" },
  { title: "Buy, low", kind: "number" },
  { title: "Buy, high", kind: "number" },
  { title: "Level reached", kind: "number" },
  { title: "Price, EUR", kind: "number" },
  { title: "Day of the figures", kind: "date" },
] as const;

/** Every step of every case, one row a group; costs of groups bought to a level are left empty. */
export function buyRows({ cases, asOf }: BuyDocument): (string | number | null)[][] {
  return cases.flatMap(({ label, groups }) =>
    groups.map((group) => [
      ...[label, group.name, group.units, group.unitYears, group.exposure, group.rate, group.a, group.b],
      ...[group.demand, group.usable],
      ...(group.byLevel ? [null, null] : [group.underCost, group.overCost]),
      ...[group.fractile, group.quantity, group.low, group.high, group.level, group.price, asOf],
    ]),
  );
}
