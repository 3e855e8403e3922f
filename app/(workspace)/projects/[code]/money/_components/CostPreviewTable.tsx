import { RowTable } from "@/app/_ui/RowTable";
import type { ReadCost } from "@/lib/intake/costs/readCosts";
import { costClassWords } from "@/lib/view/costClass";
import { type CostPreview, countRows } from "@/lib/view/costImport";
import { exactMoney } from "@/lib/view/format";
import { count } from "@/lib/view/number";
import { day } from "@/lib/view/time";

const HEADS = [
  "Row",
  "What becomes of it",
  "Kind",
  "Number",
  "Day",
  { text: "Amount", end: true },
  "Class",
  "Order",
];
const STATES = { new: "added", same: "known", error: "left out" } as const;
const MOST_SHOWN = 200;

/** What would become of each row of a file of orders and invoices. */
export function CostPreviewTable({ preview }: { readonly preview: CostPreview }) {
  const { added, same, refused } = countRows(preview);
  const { rows, problems, columns, skipped } = preview;
  const unused = columns.filter(({ field }) => field === null).map(({ header }) => `“${header}”`);
  return (
    <>
      <p className="measure" role="status">
        {`${count(added, "row")} to add, ${same} in the ledger already, ${refused} left out; ${skipped} are no entries.`}
        {unused.length > 0 ? ` Not used: ${unused.join(", ")}.` : ""}
        {problems.length > 0 ? ` ${problems.join(" ")}` : ""}
      </p>
      <RowTable caption="Rows of the file" heads={HEADS}>
        {rows.slice(0, MOST_SHOWN).map(({ rowNumber, state, cost, words }) => (
          <tr key={rowNumber}>
            <td>{rowNumber}</td>
            <td>
              <span className="font-semibold">{STATES[state]}</span>
              {words.map((text) => (
                <span key={text} className="block text-ink-2 text-sm">
                  {text}
                </span>
              ))}
            </td>
            {cost === null ? <td colSpan={CELLS} /> : <CostCells cost={cost} />}
          </tr>
        ))}
      </RowTable>
      {rows.length > MOST_SHOWN ? (
        <p className="text-ink-2">{`The first ${MOST_SHOWN} of ${rows.length} rows are shown.`}</p>
      ) : null}
    </>
  );
}

/** Columns of what a row says. */
const CELLS = 6;

function CostCells({ cost }: { readonly cost: ReadCost }) {
  const { kind, reference, spentOn, amount, currency, costClass, orderReference } = cost;
  return (
    <>
      <td>{kind === "actual" ? "paid" : "ordered"}</td>
      <td>{reference}</td>
      <td>{day(spentOn)}</td>
      <td data-align="end">{exactMoney(amount, currency)}</td>
      <td>{costClassWords(costClass)}</td>
      <td>{orderReference ?? "–"}</td>
    </>
  );
}
