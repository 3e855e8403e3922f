"use client";

import { type DragEvent, useState } from "react";
import { AsOfLink } from "@/app/_ui/AsOfLink";
import { DutyMark } from "@/app/(workspace)/_components/DutyMark";
import { BoardChip } from "@/app/(workspace)/plans/[id]/_components/board/BoardChip";
import type { BoardEdit } from "@/app/(workspace)/plans/[id]/_components/board/boardEdit";
import { LineMenu } from "@/app/(workspace)/plans/[id]/_components/board/LineMenu";
import { thousands } from "@/lib/view/format";
import { type BoardLine, type BoardView, costOfLine } from "@/lib/view/planBoard";
import { day } from "@/lib/view/time";

interface BoardRowProps {
  readonly line: BoardLine;
  readonly quarters: BoardView["quarters"];
  readonly edit: BoardEdit | null;
  readonly asOf: string;
  /** A limit about this line is broken. */
  readonly broken: boolean;
}

/** A line of the board: its ways in their quarters, and the menu of all it could be given. */
export function BoardRow({ line, quarters, edit, asOf, broken }: BoardRowProps) {
  const [dragged, setDragged] = useState<string | null>(null);
  const slotIn = (quarterId: string, optionId: string | null) =>
    line.ways.find(({ id }) => id === optionId)?.slots.find((slot) => slot.quarterId === quarterId) ?? null;
  const drop = (quarterId: string) => (event: DragEvent) => {
    event.preventDefault();
    const slot = slotIn(quarterId, dragged);
    if (edit && dragged && slot) void edit.place(line, dragged, slot);
    setDragged(null);
  };
  return (
    <tr data-broken={broken || undefined}>
      <th scope="row">
        <LineHead line={line} edit={edit} />
      </th>
      {quarters.map(({ id }) => {
        const open = dragged !== null && slotIn(id, dragged) !== null;
        return (
          <td
            key={id}
            data-year-start={id.endsWith("Q1") || undefined}
            data-open={open || undefined}
            onDragOver={open ? (event) => event.preventDefault() : undefined}
            onDrop={open ? drop(id) : undefined}
          >
            {line.placed
              .filter(({ quarterId }) => quarterId === id)
              .map((placed) => (
                <BoardChip
                  key={placed.optionId}
                  {...{ line, placed, edit, asOf }}
                  onDrag={(on) => setDragged(on ? placed.optionId : null)}
                />
              ))}
          </td>
        );
      })}
      <td data-align="end">{line.placed.length === 0 ? "" : `${thousands(costOfLine(line))} k`}</td>
    </tr>
  );
}

function LineHead({ line, edit }: Pick<BoardRowProps, "line" | "edit">) {
  const { code, name, duties, pin, pinReason, pinnedBy, acceptance } = line;
  return (
    <span className="flex items-start justify-between gap-2">
      <span>
        <AsOfLink href={`/lines/${code}`} className="row-link">
          {code}
        </AsOfLink>{" "}
        {name}{" "}
        {duties.map((duty) => (
          <DutyMark key={duty.title} {...duty} />
        ))}
        {pin === "none" ? null : (
          <span className="block text-sm" title={`${pinReason ?? ""} (${pinnedBy ?? ""})`}>
            {pin === "in" ? "● pinned in" : "○ pinned out"}
            {pinReason ? <span className="text-ink-2">: {pinReason}</span> : null}
          </span>
        )}
        {acceptance ? (
          <span className="block text-ink-2 text-sm">
            risk held until {day(acceptance.until)}, {acceptance.acceptedBy}
          </span>
        ) : null}
      </span>
      {edit ? <LineMenu line={line} edit={edit} /> : null}
    </span>
  );
}
