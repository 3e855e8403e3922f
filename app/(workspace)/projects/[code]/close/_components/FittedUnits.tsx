"use client";

import { AsOfLink } from "@/app/_ui/AsOfLink";
import { Button } from "@/app/_ui/Button";
import { orOffline } from "@/app/_ui/draft/orOffline";
import { RowTable } from "@/app/_ui/RowTable";
import { Section } from "@/app/_ui/Section";
import { UndoBar } from "@/app/_ui/UndoBar";
import { type Done, useDone } from "@/app/(workspace)/_components/useDone";
import { FittedForm } from "@/app/(workspace)/projects/[code]/close/_components/FittedForm";
import { dropThisFitted, fitThisUnit } from "@/app/(workspace)/projects/[code]/close/actions";
import type { FittedRow, ProjectClose } from "@/lib/view/closeOut";
import { plainNumber } from "@/lib/view/number";
import { day } from "@/lib/view/time";

interface FittedUnitsProps {
  readonly project: Pick<ProjectClose, "id" | "fitted" | "places">;
  readonly today: string;
  readonly mayWrite: boolean;
}

const HEADS = ["Place", "New part", "Serial", "Firmware", "In on", "Installed base"] as const;

/** What the project put in, place by place. */
export function FittedUnits({ project, today, mayWrite }: FittedUnitsProps) {
  const { done, tell, undo, close } = useDone();
  const { id: projectId, fitted, places } = project;
  const taken = new Set(fitted.map(({ positionId }) => positionId));
  const free = places.filter(({ id }) => !taken.has(id));
  return (
    <Section
      title="New units"
      id="fitted"
      lead={`${plainNumber(fitted.length)} of ${plainNumber(places.length)} drive places have a new unit on record. What does not stand in the installed base yet is put there by closing.`}
      actions={
        mayWrite && free.length > 0 ? <FittedForm {...{ projectId, places: free, today, tell }} /> : null
      }
    >
      {fitted.length === 0 ? (
        <p className="text-ink-2">No new unit is recorded.</p>
      ) : (
        <details className="disclosure prints">
          <summary className="py-2 font-semibold">{plainNumber(fitted.length)} units one by one</summary>
          <RowTable caption="New units" heads={mayWrite ? [...HEADS, { text: "Undo", print: false }] : HEADS}>
            {fitted.map((unit) => (
              <tr key={unit.id}>
                <th scope="row">{unit.place}</th>
                <td>
                  <AsOfLink href={`/parts/${unit.partId}`}>{unit.part}</AsOfLink> {unit.revision}
                </td>
                <td>{unit.serial}</td>
                <td>{unit.firmware}</td>
                <td className="whitespace-nowrap">{day(unit.fittedOn)}</td>
                <td>
                  {unit.inBase ? "● stands there" : "○ put there by closing"}
                  {unit.added ? ", the place is new" : ""}
                </td>
                {mayWrite ? (
                  <td className="no-print">
                    <TakeAway {...{ unit, projectId, tell }} />
                  </td>
                ) : null}
              </tr>
            ))}
          </RowTable>
        </details>
      )}
      <UndoBar message={done?.message ?? null} {...(done?.undo ? { onUndo: undo } : {})} onClose={close} />
    </Section>
  );
}

interface TakeAwayProps {
  readonly unit: FittedRow;
  readonly projectId: string;
  readonly tell: (done: Done) => void;
}

function TakeAway({ unit, projectId, tell }: TakeAwayProps) {
  const {
    id: unitId,
    version,
    part: plate,
    place,
    positionId,
    serial,
    revision,
    firmware,
    added,
    fittedOn,
  } = unit;
  const said = { projectId, positionId, plate, serial, revision, firmware, added, fittedOn };
  const drop = async () => {
    const answer = await orOffline(dropThisFitted({ unitId, version }));
    if (!answer.ok) return tell({ message: answer.error.reason });
    tell({
      message: `The new unit at ${place} was taken off the list.`,
      undo: () => fitThisUnit({ ...said, version: 0 }),
    });
  };
  return (
    <Button kind="quiet" aria-label={`Take ${serial} off the list`} onClick={drop}>
      Take away
    </Button>
  );
}
