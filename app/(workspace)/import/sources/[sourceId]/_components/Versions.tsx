import { RowTable } from "@/app/_ui/RowTable";
import { latestVersions, type SourceVersion } from "@/lib/view/importSource";
import { moment } from "@/lib/view/time";

const HEADS = ["Register", "Version", "Columns", "What was said", "By"];

/** How the system's files are read, newest first; earlier versions stay to be looked at. */
export function Versions({ versions }: { readonly versions: readonly SourceVersion[] }) {
  if (versions.length === 0)
    return <p>Nothing is kept yet: read a file of this system and choose its columns.</p>;
  const latest = new Set(latestVersions(versions));
  return (
    <RowTable caption="How its files are read" heads={HEADS}>
      {versions.map((one) => (
        <tr key={`${one.register} ${one.version}`}>
          <th scope="row">{one.registerLabel}</th>
          <td>{`${one.version}${latest.has(one) ? ", in use" : ""}`}</td>
          <td>
            <details className="disclosure">
              <summary>{`${one.columns.filter(({ field }) => field !== null).length} of ${one.columns.length} taken`}</summary>
              <ul className="mt-1 pl-4">
                {one.columns.map(({ header, field }) => (
                  <li key={header}>{`${header}: ${field ?? "left out"}`}</li>
                ))}
              </ul>
            </details>
          </td>
          <td>{one.answers.join(", ") || "nothing"}</td>
          <td>{`${one.changedBy}, ${moment(one.changedAt, "UTC")} UTC`}</td>
        </tr>
      ))}
    </RowTable>
  );
}
