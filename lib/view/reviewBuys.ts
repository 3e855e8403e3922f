import { exactMoney } from "@/lib/view/format";
import { count, NOT_KNOWN, plainNumber } from "@/lib/view/number";
import type { ReviewBuy } from "@/lib/view/reviewRecord";
import { stageView } from "@/lib/view/stage";
import { day } from "@/lib/view/time";

/** A column of the purchase list as a file: its title and what stands under it. */
interface BuyColumn {
  readonly title: string;
  readonly kind: "text" | "number" | "date";
  readonly value: (buy: ReviewBuy, siteCode: string) => string | number | null;
}

/** The columns of the file, in their order; a day is `YYYY-MM-DD`, what is not known is empty. */
const PLAIN: readonly BuyColumn[] = [
  { title: "Part", kind: "text", value: ({ number }) => number },
  { title: "Description", kind: "text", value: ({ description }) => description },
  { title: "Site", kind: "text", value: (_, siteCode) => siteCode },
  { title: "Quantity", kind: "number", value: ({ quantity }) => quantity },
  { title: "Unit", kind: "text", value: () => "pieces" },
  { title: "Reason", kind: "text", value: ({ reason }) => reason },
  { title: "Order by", kind: "date", value: ({ orderByOn }) => orderByOn },
  { title: "Supply stage", kind: "text", value: ({ stage }) => stageText(stage) },
];

const PRICES: readonly BuyColumn[] = [
  {
    title: "Price of a piece",
    kind: "number",
    value: ({ price }) => (price === null ? null : Number(price.amount)),
  },
  { title: "Currency", kind: "text", value: ({ price }) => price?.currency ?? null },
  { title: "Price date", kind: "date", value: ({ price }) => price?.pricedOn ?? null },
];

/** The columns of the file as its reader gets them: without price where amounts are not shown. */
export function buyColumns(showsAmounts: boolean): readonly BuyColumn[] {
  return showsAmounts ? [...PLAIN, ...PRICES] : PLAIN;
}

/** The rows of the file, cell by cell under their columns. */
export function buyRows(columns: readonly BuyColumn[], buys: readonly ReviewBuy[], siteCode: string) {
  return buys.map((buy) => columns.map(({ value }) => value(buy, siteCode)));
}

/** A row of the purchase list as the screen and the paper show it. */
export function shownBuy({ quantity, orderByOn, stage, price }: ReviewBuy) {
  return {
    quantity: plainNumber(quantity),
    orderBy: day(orderByOn),
    stage: stageText(stage) ?? NOT_KNOWN,
    price: price === null ? NOT_KNOWN : exactMoney(price.amount, price.currency),
    pricedOn: day(price?.pricedOn ?? null),
  };
}

function stageText(stage: ReviewBuy["stage"]): string | null {
  if (stage === null) return null;
  const { letter, name } = stageView(stage);
  return `${letter} ${name}`;
}

/** What the list comes to, currency by currency; what has no price is said and not counted. */
export function buyTotals(buys: readonly ReviewBuy[]): string {
  const sums = new Map<string, number>();
  for (const { price, quantity } of buys)
    if (price !== null)
      sums.set(price.currency, (sums.get(price.currency) ?? 0) + cents(price.amount) * quantity);
  const unpriced = buys.filter(({ price }) => price === null).length;
  const known = [...sums].map(([currency, sum]) => exactMoney(amountOf(sum), currency)).join(" and ");
  const rest = unpriced === 0 ? "" : `; ${count(unpriced, "part has", "parts have")} no price on record`;
  return `${count(buys.length, "part")}, ${known === "" ? "no price known" : `together ${known} at the prices shown`}${rest}.`;
}

/** Hundredths of a decimal amount with two places, which are whole. */
const cents = (amount: string) => Math.round(Number(amount) * 100);
const amountOf = (sum: number) => (sum / 100).toFixed(2);
