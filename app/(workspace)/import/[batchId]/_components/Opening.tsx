import type { ImportOpening } from "@/lib/view/importView";
import { count, plainNumber } from "@/lib/view/number";

const SEPARATORS: Readonly<Record<string, string>> = {
  ";": "semicolon",
  ",": "comma",
  "\t": "tab",
  "|": "upright stroke",
};

const ENCODINGS: Readonly<Record<string, string>> = {
  "utf-8": "UTF-8",
  "utf-16le": "UTF-16 (little-endian)",
  "utf-16be": "UTF-16 (big-endian)",
  "windows-1250": "Windows-1250 (Central European)",
  "windows-1252": "Windows-1252 (Western European)",
};

function factsOf({ format, encoding, separator, sheet, headerRow }: ImportOpening, rows: number) {
  const facts: [string, string][] = [
    ["Format", format === "csv" ? "text, one row a line" : "workbook (.xlsx)"],
  ];
  if (encoding !== null) facts.push(["Letters", ENCODINGS[encoding] ?? encoding]);
  if (separator !== null) facts.push(["Columns parted by", SEPARATORS[separator] ?? separator]);
  if (sheet !== "") facts.push(["Sheet", sheet]);
  facts.push(["Column names in row", plainNumber(headerRow)], ["Entries", plainNumber(rows)]);
  return facts;
}

/** Format, letters, separator, header row, and the rows that are no entries with the reason. */
export function Opening({ opening, rows }: { readonly opening: ImportOpening; readonly rows: number }) {
  const { skipped, skippedCount } = opening;
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
