import { useState } from "react";
import { RowTable } from "@/app/_ui/RowTable";
import type { BuyDocument } from "@/lib/view/buyDocument";
import { money } from "@/lib/view/format";
import { plainNumber } from "@/lib/view/number";

/** Pieces for each part on each site's shelf; the sheet's own split stands in them first. */
export function ShelfFields({ shelves, prices }: Pick<BuyDocument, "shelves" | "prices">) {
  const keyOf = ({ partId, siteId }: BuyDocument["shelves"][number]) => `${partId} ${siteId}`;
  const [typed, setTyped] = useState<Readonly<Record<string, string>>>(() =>
    Object.fromEntries(shelves.map((row) => [keyOf(row), String(row.proposed)])),
  );
  const numbers = [...new Set(shelves.map(({ number }) => number))];
  const sites = [...new Set(shelves.map(({ site }) => site))].sort();
  const rowAt = (number: string, site: string) =>
    shelves.find((row) => row.number === number && row.site === site);
  const piecesOf = (number: string) =>
    shelves
      .filter((row) => row.number === number)
      .reduce((sum, row) => sum + (Number(typed[keyOf(row)]) || 0), 0);
  const priceOf = (number: string) => prices.find((one) => one.number === number)?.price ?? null;
  const bought = numbers.filter((number) => piecesOf(number) > 0);
  const total = bought.every((number) => priceOf(number) !== null)
    ? bought.reduce((sum, number) => sum + piecesOf(number) * (priceOf(number) ?? 0), 0)
    : null;
  return (
    <>
      <RowTable
        caption="Pieces by part and site"
        heads={["Part", ...sites.map((text) => ({ text, end: true })), { text: "All", end: true }]}
      >
        {numbers.map((number) => (
          <tr key={number}>
            <th scope="row">{number}</th>
            {sites.map((site) => {
              const row = rowAt(number, site);
              return (
                <td key={site} data-align="end">
                  {row ? (
                    <input
                      name={keyOf(row)}
                      aria-label={`${number} at ${site}`}
                      className="input w-20 text-right"
                      type="number"
                      min={0}
                      step={1}
                      value={typed[keyOf(row)] ?? ""}
                      onChange={({ target }) => setTyped({ ...typed, [keyOf(row)]: target.value })}
                    />
                  ) : (
                    ""
                  )}
                </td>
              );
            })}
            <td data-align="end" className="font-semibold">
              {plainNumber(piecesOf(number))}
            </td>
          </tr>
        ))}
      </RowTable>
      <p role="status">
        {`${plainNumber(numbers.reduce((sum, number) => sum + piecesOf(number), 0))} pieces, ${money(total)} at list price. Where they lie is split by what each site needs; change it as you see fit.`}
      </p>
    </>
  );
}
