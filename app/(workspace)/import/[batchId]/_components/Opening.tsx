import type { ImportOpening } from "@/lib/view/importView";
import { ENCODING_WORDS, SEPARATOR_WORDS } from "@/lib/view/importWords";
import { count, plainNumber } from "@/lib/view/number";

function factsOf(
  { format, encoding, separator, sheet, headerRow, headerLines }: ImportOpening,
  rows: number,
) {
  const facts: [string, string][] = [
    ["Format", format === "csv" ? "text, one row a line" : "workbook (.xlsx)"],
  ];
  if (encoding !== null) facts.push(["Letters", ENCODING_WORDS[encoding] ?? encoding]);
  if (separator !== null) facts.push(["Columns parted by", SEPARATOR_WORDS[separator] ?? separator]);
  if (sheet !== "") facts.push(["Sheet", sheet]);
  const names =
    headerLines === 2
      ? `${plainNumber(headerRow - 1)} and ${plainNumber(headerRow)}`
      : plainNumber(headerRow);
  facts.push(["Column names in row", names], ["Entries", plainNumber(rows)]);
  return facts;
}

/** Format, letters, separator, header row, what is beside the cells, and the rows that are no entries with the reason. */
export function Opening({ opening, rows }: { readonly opening: ImportOpening; readonly rows: number }) {
  const { skipped, skippedCount, notes } = opening;
  return (
    <>
      <dl className="flex flex-wrap gap-x-10 gap-y-3">
        {factsOf(opening, rows).map(([name, value]) => (
          <div key={name}>
            <dt className="label">{name}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
      {notes.length > 0 ? (
        <ul className="measure mt-3 list-disc space-y-0.5 pl-5">
          {notes.map((note) => (
            <li key={note}>{note}</li>
          ))}
        </ul>
      ) : null}
      {skippedCount > 0 ? (
        <details className="disclosure mt-3">
          <summary className="font-semibold text-accent">
            {count(skippedCount, "row")} that hold no entry
          </summary>
          <ul className="mt-2 space-y-0.5 pl-4">
            {skipped.map(({ rowNumber, reason, text }) => (
              <li key={rowNumber}>
                Row {rowNumber}: {reason}
                {text === "" ? "" : `, “${text}”`}
              </li>
            ))}
          </ul>
          {skippedCount > skipped.length ? (
            <p className="pl-4 text-ink-2">The first {skipped.length} are listed.</p>
          ) : null}
        </details>
      ) : null}
    </>
  );
}
