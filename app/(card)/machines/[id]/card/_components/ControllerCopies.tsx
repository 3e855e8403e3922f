import { backupKindName, backupWords, type NightCard } from "@/lib/view/nightCard";
import { day } from "@/lib/view/time";

/** The controller, and where the copies of what runs in it lie. */
export function ControllerCopies({ card: { machine, backups } }: { readonly card: NightCard }) {
  const { controller, asOf } = machine;
  if (controller === null) return <p>No controller is recorded for this machine.</p>;
  const { designation, model, firmware, hardware, memoryPercent, readOn, sharedWith } = controller;
  return (
    <>
      <p>
        <strong>
          {model} ({designation})
        </strong>
        , firmware {firmware ?? "not known"}, hardware {hardware ?? "not known"}, memory{" "}
        {memoryPercent === null ? "not known" : `${memoryPercent} %`}, read {day(readOn)}.
        {sharedWith.length === 0 ? "" : ` Also stops: ${sharedWith.join(", ")}.`}
      </p>
      {backups.length === 0 ? <p>No copy of its program is recorded. Do not clear its memory.</p> : null}
      <ul>
        {backups.map((backup) => (
          <li key={backup.id}>
            <strong>{backupKindName(backup.kind)}</strong>: {backup.keptAt}; {backupWords(backup, asOf)}.
          </li>
        ))}
      </ul>
    </>
  );
}
