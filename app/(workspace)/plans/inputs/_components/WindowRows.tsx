"use client";

import { Button } from "@/app/_ui/Button";
import { Dialog } from "@/app/_ui/Dialog";
import { RowTable } from "@/app/_ui/RowTable";
import { Section } from "@/app/_ui/Section";
import { UndoBar } from "@/app/_ui/UndoBar";
import { RowForm } from "@/app/(workspace)/_components/RowForm";
import { useDone } from "@/app/(workspace)/_components/useDone";
import { removeThisWindow, saveThisWindow } from "@/app/(workspace)/plans/inputs/actions";
import { plainNumber } from "@/lib/view/number";
import type { InputSite, InputWindow } from "@/lib/view/planInputs";
import { dayRange } from "@/lib/view/time";

interface WindowRowsProps {
  readonly windows: readonly InputWindow[];
  readonly sites: readonly InputSite[];
}

const HEADS = [
  "Site",
  "Window",
  "Days",
  { text: "Usable hours", end: true },
  "Note",
  { text: "Change", print: false },
];

/** The shutdowns in which lines can be worked on. */
export function WindowRows({ windows, sites }: WindowRowsProps) {
  const { done, tell, undo, close } = useDone();
  const writable = sites.filter(({ writes }) => writes);
  const form = (window: InputWindow | null, closeDialog: () => void) => (
    <RowForm
      fields={[
        {
          name: "siteId",
          label: "Site",
          choices: writable.map(({ id, code, name }) => ({ value: id, label: `${code} ${name}` })),
        },
        { name: "name", label: "Name" },
        { name: "startsOn", label: "First day", date: true },
        { name: "endsOn", label: "Last day", date: true },
        {
          name: "usableHours",
          label: "Usable hours on each line",
          hint: "Empty while nobody has settled it with production; then nothing is planned into it.",
        },
        { name: "note", label: "Note" },
      ]}
      values={{
        siteId: window?.siteId ?? "",
        name: window?.name ?? "",
        startsOn: window?.startsOn ?? "",
        endsOn: window?.endsOn ?? "",
        usableHours: window?.usableHours?.toString() ?? "",
        note: window?.note ?? "",
      }}
      save={(values) =>
        saveThisWindow({ ...values, windowId: window?.id ?? null, version: window?.version ?? null })
      }
      onSaved={(values) => {
        closeDialog();
        tell({ message: `Kept: ${values.name}.` });
      }}
    />
  );
  return (
    <Section
      id="windows"
      title="Shutdown windows"
      lead="Days on which a whole site or a line stands still. Work planned into a window may take four fifths of its usable hours."
      actions={
        writable.length > 0 ? (
          <Dialog trigger="Add a window" title="Add a window" wide>
            {(closeDialog) => form(null, closeDialog)}
          </Dialog>
        ) : undefined
      }
    >
      {windows.length === 0 ? (
        <p className="measure text-ink-2">No window is on record. Work that needs one cannot be planned.</p>
      ) : (
        <RowTable caption="Shutdown windows" heads={HEADS}>
          {windows.map((window) => (
            <tr key={window.id}>
              <th scope="row">{window.siteCode}</th>
              <td>{window.name}</td>
              <td className="whitespace-nowrap">{dayRange(window.startsOn, window.endsOn)}</td>
              <td data-align="end">
                {window.usableHours === null ? (
                  <em className="text-ink-2">not known</em>
                ) : (
                  plainNumber(window.usableHours)
                )}
              </td>
              <td translate="no" className="text-ink-2">
                {window.note}
              </td>
              <td className="no-print whitespace-nowrap">
                {writable.some(({ id }) => id === window.siteId) ? (
                  <>
                    <Dialog
                      trigger="Change"
                      kind="quiet"
                      title={`Change: ${window.siteCode} ${window.name}`}
                      wide
                    >
                      {(closeDialog) => form(window, closeDialog)}
                    </Dialog>
                    <Button
                      kind="quiet"
                      aria-label={`Remove ${window.siteCode} ${window.name}`}
                      onClick={async () => {
                        const answer = await removeThisWindow({
                          windowId: window.id,
                          version: window.version,
                        });
                        const { siteId, name, startsOn, endsOn, note } = window;
                        tell(
                          answer.ok
                            ? {
                                message: `Removed: ${window.siteCode} ${name}.`,
                                undo: () =>
                                  saveThisWindow({
                                    ...{ windowId: null, version: null, siteId, name, startsOn, endsOn },
                                    ...{
                                      note: note ?? "",
                                      usableHours: window.usableHours?.toString() ?? "",
                                    },
                                  }),
                              }
                            : { message: answer.error.reason },
                        );
                      }}
                    >
                      Remove
                    </Button>
                  </>
                ) : null}
              </td>
            </tr>
          ))}
        </RowTable>
      )}
      <UndoBar message={done?.message ?? null} {...(done?.undo ? { onUndo: undo } : {})} onClose={close} />
    </Section>
  );
}
