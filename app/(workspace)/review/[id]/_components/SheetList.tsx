import { count } from "@/lib/view/number";

export type Head = string | { readonly text: string; readonly end: boolean };

interface SheetListProps {
  readonly title: string;
  /** Said where there are no rows. */
  readonly none: string;
  readonly note?: string | null;
  /** Rows that go onto paper; the screen shows all. */
  readonly most: number;
  readonly heads: readonly Head[];
  readonly rows: readonly { readonly key: string; readonly cells: readonly string[] }[];
}

/** A titled table of a sheet. */
export function SheetList({ title, none, note = null, most, heads, rows }: SheetListProps) {
  const more = rows.length - most;
  return (
    <section>
      <h2 className="font-semibold">{title}</h2>
      {rows.length === 0 ? (
        <p>{none}</p>
      ) : (
        <div className="review-frame">
          <table className="table">
            <caption className="sr-only">{title}</caption>
            <thead>
              <tr>
                {heads.map((head) => (
                  <th key={textOf(head)} scope="col" className="label" data-align={alignOf(head)}>
                    {textOf(head)}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {rows.map(({ key, cells }, place) => (
                <tr key={key} className={place < most ? undefined : "no-print"}>
                  {cells.map((text, column) => (
                    <td key={textOf(heads[column] ?? "")} data-align={alignOf(heads[column] ?? "")}>
                      {text}
                    </td>
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
      {more > 0 ? (
        <p className="review-note hidden print:block">{`and ${count(more, "further row")} on the screen.`}</p>
      ) : null}
      {note === null ? null : <p className="review-note">{note}</p>}
    </section>
  );
}

const textOf = (head: Head) => (typeof head === "string" ? head : head.text);
const alignOf = (head: Head) => (typeof head === "string" || !head.end ? undefined : "end");
