import { AsOfLink } from "@/app/_ui/AsOfLink";
import { RowTable } from "@/app/_ui/RowTable";
import { StaleMark } from "@/app/_ui/StaleMark";
import { exactMoney, money } from "@/lib/view/format";
import { plainNumber } from "@/lib/view/number";
import { isPriceStale, priceAge } from "@/lib/view/partSupply";
import { type LevelRow, surplusEuro, surplusOf, surplusReason } from "@/lib/view/stockLevels";

const headsOf = (showsPrices: boolean) => [
  ...["Part", "Site", { text: "Surplus", end: true }, { text: "Keep", end: true }, "Needed at other sites"],
  ...(showsPrices
    ? [
        { text: "Price a piece", end: true },
        { text: "Value", end: true },
      ]
    : []),
  "Why",
];

interface SurplusTableProps {
  /** The most valuable first. */
  readonly rows: readonly LevelRow[];
  readonly asOf: string;
  readonly showsPrices: boolean;
}

/** Pieces beyond what is needed, with their value at the day of the price. */
export function SurplusTable({ rows, asOf, showsPrices }: SurplusTableProps) {
  if (rows.length === 0) return <p>No site holds more than it needs.</p>;
  return (
    <RowTable
      caption={showsPrices ? "Surplus, the most valuable first" : "Surplus"}
      heads={headsOf(showsPrices)}
    >
      {rows.map((row) => (
        <tr key={`${row.partId} ${row.siteCode}`}>
          <th scope="row">
            <AsOfLink href={`/parts/${row.partId}`}>{row.part}</AsOfLink>
          </th>
          <td>{row.siteCode}</td>
          <td data-align="end" className="font-semibold">
            {plainNumber(surplusOf(row))}
          </td>
          <td data-align="end">{plainNumber(row.levels.keep)}</td>
          <td>{row.unitsInGroup > row.units ? "yes" : "no"}</td>
          {showsPrices ? <Value row={row} asOf={asOf} /> : null}
          <td>{surplusReason(row, asOf)}</td>
        </tr>
      ))}
    </RowTable>
  );
}

function Value({ row, asOf }: { readonly row: LevelRow; readonly asOf: string }) {
  return (
    <>
      <td data-align="end">
        {exactMoney(row.price, row.priceCurrency ?? "EUR")}
        {row.price === null ? null : (
          <span className="block text-ink-2 text-sm">
            {priceAge(row.pricedOn, asOf)}
            {isPriceStale(row.pricedOn, asOf) ? <StaleMark text="old price" /> : null}
          </span>
        )}
      </td>
      <td data-align="end">{money(surplusEuro(row))}</td>
    </>
  );
}
