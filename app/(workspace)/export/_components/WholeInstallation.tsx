import { LinkButton } from "@/app/_ui/LinkButton";
import { Notice } from "@/app/_ui/Notice";
import { RowTable } from "@/app/_ui/RowTable";
import { TakeIn } from "@/app/(workspace)/export/_components/TakeIn";
import type { CopyDesk } from "@/lib/data/wholeCopy";
import { plainNumber } from "@/lib/view/number";
import { moment } from "@/lib/view/time";

/** Taking everything out, what was taken out or in so far, and in an empty installation taking a copy in. */
export function WholeInstallation({ desk: { copies, empty } }: { readonly desk: CopyDesk }) {
  return (
    <>
      <Notice kind="info">
        The archive names people and holds firmware and stock of every site: give it to nobody who may not see
        all of it. Passwords, sessions, keys of other systems and addresses of calendars are not in it;
        whoever takes it in gives people new passwords. A backup with them is made by{" "}
        <code>npm run backup</code> on the server.
      </Notice>
      <p className="my-4">
        <LinkButton href="/api/whole" download>
          Take everything out
        </LinkButton>
      </p>
      {empty ? <TakeIn /> : null}
      {copies.length === 0 ? null : (
        <RowTable
          caption="Copies so far"
          heads={["When", "What", "Who", { text: "Rows", end: true }, "Hash of the content"]}
        >
          {copies.map(({ id, direction, at, by, rows, hash, withSecrets }) => (
            <tr key={id}>
              <td>{`${moment(at, "UTC")} UTC`}</td>
              <td>{`${direction === "out" ? "Taken out" : "Taken in"}${withSecrets ? ", with secrets" : ""}`}</td>
              <td>{by ?? "Command line"}</td>
              <td data-align="end">{plainNumber(rows)}</td>
              <td className="break-all font-mono text-sm">{hash}</td>
            </tr>
          ))}
        </RowTable>
      )}
    </>
  );
}
