import type { ImportOpening } from "@/lib/view/importView";
import { count } from "@/lib/view/number";

/** The first rows as they stand in the file, one of them marked as the row with the column names. */
export function FirstRows({ opening }: { readonly opening: ImportOpening }) {
  const { firstRows, letters, headerRow, headerLines, columnsLeft } = opening;
  return (
    <fieldset className="min-w-0">
      <legend className="font-semibold">Which row holds the column names?</legend>
      <div className="table-frame mt-1">
        <table className="table">
          <caption className="sr-only">First rows of the file as they stand</caption>
          <thead>
            <tr>
              <th scope="col" className="label">
                Row
              </th>
              {letters.map((letter) => (
                <th key={letter} scope="col" className="label">
                  {letter}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {firstRows.map(({ rowNumber, cells }) => (
              <tr key={rowNumber}>
                <th scope="row">
                  <label className="inline-flex min-h-9 items-center gap-2.5">
                    <input
                      type="radio"
                      className="tick"
                      name="headerRow"
                      value={rowNumber}
                      defaultChecked={rowNumber === headerRow}
                    />
                    {rowNumber}
                  </label>
                </th>
                {letters.map((letter) => (
                  <td key={letter} className={rowNumber === headerRow ? "font-semibold" : ""}>
                    {cells[letter]}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {columnsLeft > 0 ? (
        <p className="text-ink-2 text-sm">{count(columnsLeft, "column")} more to the right.</p>
      ) : null}
      <label className="mt-2 inline-flex min-h-9 items-center gap-2.5">
        <input type="checkbox" className="tick" name="twoLines" defaultChecked={headerLines === 2} />
        The row above it holds names of groups
      </label>
    </fieldset>
  );
}
