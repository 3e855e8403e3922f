import { bookWords, type CountSheet, entryWords } from "@/lib/view/count";

const HEADS = [
  "Bin",
  "Part",
  "Revision",
  "Found",
  "Condition",
  "Last powered",
  "Tested",
  "Hold, why",
] as const;

/** The sheet on paper: a line for every lot with room to write, and room for what no record knows. */
export function PaperSheet({ sheet }: { readonly sheet: CountSheet }) {
  const shown = sheet.lines.some(({ book }) => book !== null);
  const heads = shown ? [...HEADS.slice(0, 3), "Book", ...HEADS.slice(3)] : HEADS;
  const empty = Array.from({ length: heads.length }, (_, place) => place);
  return (
    <div className="hidden print:block">
      <table className="table">
        <caption className="sr-only">Count sheet on paper</caption>
        <thead>
          <tr>
            {heads.map((head) => (
              <th key={head} scope="col" className="label">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {sheet.lines.map((line) => (
            <tr key={line.id} className="h-9">
              <th scope="row">{line.bin}</th>
              <td>{line.part ?? line.plate}</td>
              <td>{line.revision === "" ? "not known" : line.revision}</td>
              {shown ? <td>{line.book ? bookWords(line.book) : "no record"}</td> : null}
              <td colSpan={5}>{line.entry.found === "" ? "" : entryWords(line.entry, line.countedBy)}</td>
            </tr>
          ))}
          {[1, 2, 3, 4].map((row) => (
            <tr key={row} className="h-9">
              {empty.map((place) => (
                <td key={place} />
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      <p className="mt-6">Counted by ____________________ on ____________________</p>
    </div>
  );
}
