"use client";

import { AsOfLink } from "@/app/_ui/AsOfLink";
import { EmptyState } from "@/app/_ui/EmptyState";
import { RowTable } from "@/app/_ui/RowTable";
import { Section } from "@/app/_ui/Section";
import { UndoBar } from "@/app/_ui/UndoBar";
import { useDone } from "@/app/(workspace)/_components/useDone";
import { RemovedForm } from "@/app/(workspace)/projects/[code]/close/_components/RemovedForm";
import {
  type ProjectClose,
  RESULT_WORDS,
  type ReleaseCount,
  type RemovedRow,
  releaseCounts,
} from "@/lib/view/closeOut";
import { NOT_KNOWN, plainNumber } from "@/lib/view/number";
import { day } from "@/lib/view/time";

interface RemovedUnitsProps {
  readonly project: Pick<ProjectClose, "id" | "code" | "removed" | "places">;
  readonly today: string;
  readonly mayWrite: boolean;
}

const COUNTS = [
  "Part",
  { text: "Usable", end: true },
  { text: "Unproven", end: true },
  { text: "Needs repair", end: true },
  { text: "Scrapped", end: true },
  { text: "Untested", end: true },
] as const;
const HEADS = ["Part", "Serial", "Came out of", "Out on", "Test", "Tested by, how", "Bin"] as const;

/** What the project took out: by part and result, then unit by unit with its test. */
export function RemovedUnits({ project, today, mayWrite }: RemovedUnitsProps) {
  const { done, tell, undo, close } = useDone();
  const { id: projectId, removed, places } = project;
  const form = { projectId, places, today, tell };
  const untested = removed.filter(({ result }) => result === null).length;
  return (
    <Section
      title="Removed units"
      id="removed"
      lead="The project holds them until it is closed: they are in no figure of the shelf before. A unit nobody tested is no spare."
      actions={mayWrite ? <RemovedForm {...form} unit={null} trigger="Record a removed unit" /> : null}
    >
      {removed.length === 0 ? (
        <EmptyState title="No removed unit is recorded">
          Write down each unit as it comes out, with its serial and the place it came from.
        </EmptyState>
      ) : (
        <>
          <Counts counts={releaseCounts(removed)} />
          <details open={untested > 0} className="disclosure prints mt-4">
            <summary className="py-2 font-semibold">{plainNumber(removed.length)} units one by one</summary>
            <RowTable
              caption="Removed units"
              heads={mayWrite ? [...HEADS, { text: "Change", print: false }] : HEADS}
            >
              {untestedFirst(removed).map((unit) => (
                <tr key={unit.id}>
                  <Cells unit={unit} />
                  {mayWrite ? (
                    <td className="no-print">
                      <RemovedForm
                        {...form}
                        unit={unit}
                        trigger={`${unit.result === null ? "Test" : "Change"} ${unit.serial || unit.part}`}
                      />
                    </td>
                  ) : null}
                </tr>
              ))}
            </RowTable>
          </details>
        </>
      )}
      <UndoBar message={done?.message ?? null} {...(done?.undo ? { onUndo: undo } : {})} onClose={close} />
    </Section>
  );
}

const untestedFirst = (removed: readonly RemovedRow[]) =>
  [...removed].sort((a, b) => Number(a.result !== null) - Number(b.result !== null));

function Counts({ counts }: { readonly counts: readonly ReleaseCount[] }) {
  return (
    <RowTable caption="Removed units by part and result" heads={COUNTS}>
      {counts.map(({ part, usable, unproven, needsRepair, scrapped, untested }) => (
        <tr key={part}>
          <th scope="row">{part}</th>
          <td data-align="end">{usable}</td>
          <td data-align="end">{unproven}</td>
          <td data-align="end">{needsRepair}</td>
          <td data-align="end">{scrapped}</td>
          <td data-align="end" className={untested > 0 ? "font-semibold" : undefined}>
            {untested > 0 ? `▲ ${untested}` : untested}
          </td>
        </tr>
      ))}
    </RowTable>
  );
}

function Cells({ unit }: { readonly unit: RemovedRow }) {
  const { partId, part, serial, revision, place, removedOn, result, testedBy, how, testedOn, bin } = unit;
  return (
    <>
      <th scope="row" className="whitespace-nowrap">
        <AsOfLink href={`/parts/${partId}`}>{part}</AsOfLink>
        {revision === "" ? null : <span className="font-normal text-ink-2"> {revision}</span>}
      </th>
      <td>{serial === "" ? NOT_KNOWN : serial}</td>
      <td>{place ?? NOT_KNOWN}</td>
      <td className="whitespace-nowrap">{day(removedOn)}</td>
      <td>{result === null ? "▲ removed, untested" : `● ${RESULT_WORDS[result]}, ${day(testedOn)}`}</td>
      <td>{result === null ? "" : `${testedBy}: ${how}`}</td>
      <td className="whitespace-nowrap">{result === "scrapped" ? "none" : bin}</td>
    </>
  );
}
