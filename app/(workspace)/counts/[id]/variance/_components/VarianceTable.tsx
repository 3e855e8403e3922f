import { Delta } from "@/app/_ui/Delta";
import { RowTable } from "@/app/_ui/RowTable";
import { bookWords, type VarianceLine, type VarianceSheet } from "@/lib/view/count";
import { money } from "@/lib/view/format";
import { count, NOT_KNOWN, plainNumber } from "@/lib/view/number";
import { stockStateName } from "@/lib/view/partShelf";
import { day } from "@/lib/view/time";

const HEADS = [
  "Bin",
  "Part",
  "On the book",
  { text: "Found", end: true },
  "Booked as",
  { text: "Difference", end: true },
  { text: "Worth", end: true },
  "Counted by",
] as const;

function Pieces({ pieces }: { readonly pieces: number | null }) {
  if (pieces === null) return <>{NOT_KNOWN}</>;
  if (pieces === 0) return <Delta kind="same" text="none" />;
  return (
    <Delta kind={pieces < 0 ? "worse" : "better"} text={`${pieces > 0 ? "+" : ""}${plainNumber(pieces)}`} />
  );
}

function Row({ line }: { readonly line: VarianceLine }) {
  const { variance, holdReason, note, originUnknown } = line;
  const said = [holdReason, originUnknown ? "origin not known" : "", note].filter((word) => word !== "");
  return (
    <tr>
      <th scope="row" className={line.differs ? "font-semibold" : ""}>
        {line.bin}
      </th>
      <td>
        {line.part} {line.revision}
      </td>
      <td>{line.book ? bookWords(line.book) : "no record"}</td>
      <td data-align="end">{line.found === null ? "" : plainNumber(line.found)}</td>
      <td>
        {stockStateName(line.booked)}
        {said.length === 0 ? null : <span className="block text-ink-2 text-sm">{said.join(", ")}</span>}
      </td>
      <td data-align="end">
        <Pieces pieces={variance.pieces} />
      </td>
      <td data-align="end">
        {money(variance.euro)}
        {line.price === null ? null : (
          <span className="block text-ink-2 text-sm">
            {money(line.price)} a piece, {day(line.pricedOn)}
          </span>
        )}
      </td>
      <td>{line.countedBy}</td>
    </tr>
  );
}

/** Counted lines, those that differ first; the rest are opened on demand. */
export function VarianceTable({ variance }: { readonly variance: VarianceSheet }) {
  const differing = variance.lines.filter(({ differs }) => differs);
  const same = variance.lines.filter(({ differs }) => !differs);
  return (
    <>
      {differing.length === 0 ? (
        <p>No counted line differs from the book.</p>
      ) : (
        <RowTable caption="Lines that differ from the book" heads={HEADS}>
          {differing.map((line) => (
            <Row key={line.id} line={line} />
          ))}
        </RowTable>
      )}
      {same.length === 0 ? null : (
        <details className="disclosure mt-3">
          <summary className="py-2 font-semibold">{count(same.length, "line")} as on the book</summary>
          <RowTable caption="Lines as on the book" heads={HEADS}>
            {same.map((line) => (
              <Row key={line.id} line={line} />
            ))}
          </RowTable>
        </details>
      )}
    </>
  );
}
