import { RowTable } from "@/app/_ui/RowTable";
import { bookWords, type CountLine, entryWords } from "@/lib/view/count";

/** The lines of a sheet one may only read. */
export function WrittenLines({ lines }: { readonly lines: readonly CountLine[] }) {
  return (
    <RowTable caption="Lines of the count" heads={["Bin", "Part", "Revision", "Book", "Written"]}>
      {lines.map((line) => (
        <tr key={line.id}>
          <th scope="row">{line.bin}</th>
          <td>{line.part ?? `plate ${line.plate}`}</td>
          <td>{line.revision === "" ? "not known" : line.revision}</td>
          <td>
            {line.book ? bookWords(line.book) : line.isFind ? "no record" : "hidden while it is counted"}
          </td>
          <td>{entryWords(line.entry, line.countedBy)}</td>
        </tr>
      ))}
    </RowTable>
  );
}
