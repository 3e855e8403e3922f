"use client";

import { Button } from "@/app/_ui/Button";
import { Dialog } from "@/app/_ui/Dialog";
import { UndoBar } from "@/app/_ui/UndoBar";
import { useDone } from "@/app/(workspace)/_components/useDone";
import { BackupForm } from "@/app/(workspace)/machines/[id]/_components/BackupForm";
import { ContactForm } from "@/app/(workspace)/machines/[id]/_components/ContactForm";
import {
  putCopyBack,
  putNumberBack,
  removeCopy,
  removeNumber,
} from "@/app/(workspace)/machines/[id]/actions";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { backupKindName, backupWords, type CardBackup, type CardContact } from "@/lib/view/nightCard";

interface CardEntriesProps {
  readonly machineId: string;
  readonly asOf: IsoDate;
  readonly backups: readonly CardBackup[];
  readonly contacts: readonly CardContact[];
  readonly mayEdit: boolean;
}

interface Entry {
  readonly id: string;
  readonly name: string;
  readonly words: string;
}

/** The copies and numbers of the night card, and what can be changed about them. */
export function CardEntries({ machineId, asOf, backups, contacts, mayEdit }: CardEntriesProps) {
  const { done, tell, undo, close } = useDone();
  const remove = (drop: typeof removeCopy, putBack: typeof putCopyBack) => async (entry: Entry) => {
    const { id } = entry;
    const answer = await drop({ id });
    if (answer.ok) tell({ message: `Removed: ${entry.name}.`, undo: () => putBack({ id }) });
    else tell({ message: answer.error.reason });
  };
  return (
    <div className="grid gap-x-10 gap-y-6 lg:grid-cols-2">
      <div>
        <h3 className="label">Copies of the controller</h3>
        <Entries
          entries={backups.map((backup) => ({
            id: backup.id,
            name: backupKindName(backup.kind),
            words: `${backup.keptAt}; ${backupWords(backup, asOf)}`,
          }))}
          none="No copy is recorded."
          onRemove={mayEdit ? remove(removeCopy, putCopyBack) : null}
        />
        {mayEdit ? (
          <Dialog trigger="Add a copy" title="Add a copy of the controller">
            {(closeDialog) => (
              <BackupForm
                machineId={machineId}
                onSaved={(id) => {
                  closeDialog();
                  tell({ message: "The copy is recorded.", undo: () => removeCopy({ id }) });
                }}
              />
            )}
          </Dialog>
        ) : null}
      </div>
      <div>
        <h3 className="label">Whom to call</h3>
        <Entries
          entries={contacts.map(({ id, role, phone, hours, note }) => ({
            id,
            name: role,
            words: [phone, hours, ...(note === null ? [] : [note])].join("; "),
          }))}
          none="No number is recorded."
          onRemove={mayEdit ? remove(removeNumber, putNumberBack) : null}
        />
        {mayEdit ? (
          <Dialog trigger="Add a number" title="Add a function to call">
            {(closeDialog) => (
              <ContactForm
                machineId={machineId}
                onSaved={(id) => {
                  closeDialog();
                  tell({ message: "The number is recorded.", undo: () => removeNumber({ id }) });
                }}
              />
            )}
          </Dialog>
        ) : null}
      </div>
      <UndoBar message={done?.message ?? null} {...(done?.undo ? { onUndo: undo } : {})} onClose={close} />
    </div>
  );
}

interface EntriesProps {
  readonly entries: readonly Entry[];
  readonly none: string;
  readonly onRemove: ((entry: Entry) => Promise<void>) | null;
}

function Entries({ entries, none, onRemove }: EntriesProps) {
  if (entries.length === 0) return <p className="py-1">{none}</p>;
  return (
    <ul className="mb-2">
      {entries.map((entry) => (
        <li key={entry.id} className="flex items-baseline justify-between gap-3 border-rule border-b py-1">
          <span>
            <strong>{entry.name}</strong>: {entry.words}
          </span>
          {onRemove === null ? null : (
            <Button kind="quiet" aria-label={`Remove ${entry.name}`} onClick={() => onRemove(entry)}>
              Remove
            </Button>
          )}
        </li>
      ))}
    </ul>
  );
}
