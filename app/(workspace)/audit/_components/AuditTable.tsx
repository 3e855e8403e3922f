import { AsOfLink } from "@/app/_ui/AsOfLink";
import { RowTable } from "@/app/_ui/RowTable";
import type { AuditChange } from "@/lib/view/audit/auditChanges";
import type { AuditLine } from "@/lib/view/audit/auditEntry";
import { deedWords } from "@/lib/view/audit/deedWords";
import { moment } from "@/lib/view/time";

/** A change of more than this is opened by whoever wants to see it. */
const MOST_OPEN = 8;

const HEADS = ["Who", "What was done", "To what", "Before and after", "Why"];

interface AuditTableProps {
  readonly lines: readonly AuditLine[];
  /** Zone whose clock the reader is told instants by. */
  readonly zone: string;
}

/** Entries of the audit, newest first. */
export function AuditTable({ lines, zone }: AuditTableProps) {
  return (
    <RowTable caption="Changes, newest first" heads={[`When (${zone})`, ...HEADS]}>
      {lines.map((line) => (
        <tr key={line.id} id={line.id}>
          <td className="whitespace-nowrap align-top">
            <time dateTime={line.at}>{moment(line.at, zone)}</time>
          </td>
          <td className="align-top">
            {line.who ?? "Ebbline itself"}
            {line.byKey === null ? null : (
              <p className="text-ink-2 text-sm">by the access key {line.byKey}</p>
            )}
          </td>
          <td className="align-top">{deedWords(line.deed)}</td>
          <td className="align-top">
            <Thing line={line} />
          </td>
          <td className="align-top">
            <Changes changes={line.changes} />
          </td>
          <td className="align-top">
            {line.why === null ? (
              <span className="text-ink-2">none given</span>
            ) : (
              <span translate="no">{line.why}</span>
            )}
          </td>
        </tr>
      ))}
    </RowTable>
  );
}

function Thing({ line: { what, siteCode } }: { readonly line: AuditLine }) {
  return (
    <>
      {what === null ? null : what.href === null ? (
        what.label
      ) : (
        <AsOfLink href={what.href}>{what.label}</AsOfLink>
      )}
      {siteCode === null ? null : <p className="text-ink-2 text-sm">{siteCode}</p>}
    </>
  );
}

function Changes({ changes }: { readonly changes: readonly AuditChange[] | null }) {
  if (changes === null) return <span className="text-ink-2">Not shown, since it may hold amounts</span>;
  if (changes.length === 0) return <span className="text-ink-2">nothing further kept</span>;
  if (changes.length <= MOST_OPEN) return <ChangeList changes={changes} />;
  return (
    <details className="disclosure prints">
      <summary>{`${changes.length} things changed`}</summary>
      <ChangeList changes={changes} />
    </details>
  );
}

function ChangeList({ changes }: { readonly changes: readonly AuditChange[] }) {
  return (
    <dl className="grid gap-x-3 text-sm sm:grid-cols-[max-content_minmax(0,1fr)]">
      {changes.map(({ field, from, to }) => (
        <div key={field} className="contents">
          <dt className="text-ink-2">{field}</dt>
          <dd className="break-words">
            {from === null ? null : <del className="text-ink-2">{from}</del>}
            {from === null || to === null ? null : " → "}
            {to === null ? null : <ins className="no-underline">{to}</ins>}
          </dd>
        </div>
      ))}
    </dl>
  );
}
