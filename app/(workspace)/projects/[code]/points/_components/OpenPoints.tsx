"use client";

import { Button } from "@/app/_ui/Button";
import { Delta } from "@/app/_ui/Delta";
import { orOffline } from "@/app/_ui/draft/orOffline";
import { EmptyState } from "@/app/_ui/EmptyState";
import { RowTable } from "@/app/_ui/RowTable";
import { Section } from "@/app/_ui/Section";
import { Tabs } from "@/app/_ui/Tabs";
import { UndoBar } from "@/app/_ui/UndoBar";
import { type Done, useDone } from "@/app/(workspace)/_components/useDone";
import { PointForm } from "@/app/(workspace)/projects/[code]/points/_components/PointForm";
import { settleThisPoint } from "@/app/(workspace)/projects/[code]/points/actions";
import {
  isLate,
  type OpenPointRow,
  POINT_FILTERS,
  type PointFilter,
  pointsOf,
} from "@/lib/view/projectPoints";
import { day, distance } from "@/lib/view/time";

interface OpenPointsProps {
  readonly projectId: string;
  readonly code: string;
  readonly points: readonly OpenPointRow[];
  readonly filter: PointFilter;
  readonly asOf: string;
  readonly mayWrite: boolean;
  /** Whoever records in the project raises points; changing them is for who runs it. */
  readonly mayRaise: boolean;
}

const HEADS = ["What", "Who", "Due", "In the way of acceptance", "State"] as const;

const FILTER_WORDS: Readonly<Record<PointFilter, string>> = {
  open: "Open",
  blocking: "In the way",
  late: "Late",
  done: "Done",
  all: "All",
};

/** What is left to do, what is late first. */
export function OpenPoints({ projectId, code, points, filter, asOf, mayWrite, mayRaise }: OpenPointsProps) {
  const { done, tell, undo, close } = useDone();
  const shown = pointsOf(points, filter, asOf);
  const page = `/projects/${encodeURIComponent(code)}/points`;
  return (
    <Section
      title="Open points"
      id="points"
      actions={
        mayRaise ? (
          <PointForm {...{ projectId, tell }} point={null} trigger="Add a point" mayUndo={mayWrite} />
        ) : null
      }
    >
      <Tabs
        label="Which points"
        tabs={POINT_FILTERS.map((one) => ({
          label: FILTER_WORDS[one],
          href: one === "open" ? page : `${page}?show=${one}`,
          current: one === filter,
          count: pointsOf(points, one, asOf).length,
        }))}
      />
      {shown.length === 0 ? (
        <EmptyState title={points.length === 0 ? "No point is on record" : "None of these"}>
          {points.length === 0
            ? "Write down what is left to do, with a name and a day."
            : "Choose another view above."}
        </EmptyState>
      ) : (
        <RowTable
          caption={`Points: ${FILTER_WORDS[filter]}`}
          heads={mayWrite ? [...HEADS, { text: "Change", print: false }] : HEADS}
        >
          {shown.map((point) => (
            <tr key={point.id}>
              <th scope="row" className="min-w-56">
                {point.what}
              </th>
              <td>{point.owner}</td>
              <td className="whitespace-nowrap">{point.dueOn === null ? "not dated" : day(point.dueOn)}</td>
              <td>{point.blocks ? "■ yes" : "□ no"}</td>
              <td>
                <PointState point={point} asOf={asOf} />
              </td>
              {mayWrite ? (
                <td className="no-print">
                  <div className="flex flex-wrap gap-2">
                    <Settle {...{ point, tell }} />
                    <PointForm {...{ projectId, tell, point }} trigger="Change" mayUndo />
                  </div>
                </td>
              ) : null}
            </tr>
          ))}
        </RowTable>
      )}
      <UndoBar message={done?.message ?? null} {...(done?.undo ? { onUndo: undo } : {})} onClose={close} />
    </Section>
  );
}

function PointState({ point, asOf }: { readonly point: OpenPointRow; readonly asOf: string }) {
  if (point.doneOn !== null) return <>{`● done ${day(point.doneOn)} by ${point.doneBy}`}</>;
  if (isLate(point, asOf))
    return <Delta kind="worse" text={`late, was due ${distance(point.dueOn, asOf)}`} />;
  return <>○ open</>;
}

interface SettleProps {
  readonly point: OpenPointRow;
  readonly tell: (done: Done) => void;
}

function Settle({ point, tell }: SettleProps) {
  const { id: pointId, version, what, doneOn } = point;
  const done = doneOn === null;
  const settle = async () => {
    const answer = await orOffline(settleThisPoint({ pointId, version, done }));
    if (!answer.ok) return tell({ message: answer.error.reason });
    tell({
      message: done ? `Done: ${what}` : `Open again: ${what}`,
      undo: () => settleThisPoint({ ...answer.value, done: !done }),
    });
  };
  return (
    <Button aria-label={`${done ? "Done" : "Open again"}: ${what}`} onClick={settle}>
      {done ? "Done" : "Open again"}
    </Button>
  );
}
