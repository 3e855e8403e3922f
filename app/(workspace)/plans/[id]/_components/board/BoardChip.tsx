"use client";

import { type KeyboardEvent, useState } from "react";
import type { BoardEdit } from "@/app/(workspace)/plans/[id]/_components/board/boardEdit";
import { WayMenu } from "@/app/(workspace)/plans/[id]/_components/board/LineMenu";
import { missedWords, placeWords, shortWay, slotCautions } from "@/lib/view/boardWords";
import { moneySpan } from "@/lib/view/format";
import type { BoardLine, Placed } from "@/lib/view/planBoard";

interface BoardChipProps {
  readonly line: BoardLine;
  readonly placed: Placed;
  readonly edit: BoardEdit | null;
  readonly asOf: string;
  readonly onDrag: (on: boolean) => void;
}

/** A way in its place: dragged by the pointer, moved by keys, opened for its menu. */
export function BoardChip({ line, placed, edit, asOf, onDrag }: BoardChipProps) {
  const [open, setOpen] = useState(false);
  const way = line.ways.find(({ id }) => id === placed.optionId);
  const slot = way?.slots.find(({ id }) => id === placed.slotId);
  const cautions = [...(slot ? slotCautions(slot) : []), ...missedWords(placed, asOf)];
  const { low, typical, high } = placed.cost;
  const where = slot ? placeWords(slot) : placed.slotName;
  const text = `${line.code}, ${placed.name}, in ${where}, ${moneySpan({ low, mean: typical, high })}${cautions.length > 0 ? `. ${cautions.join("; ")}` : ""}`;
  const look = { "data-late": cautions.length > 0 || undefined, title: text };
  const face = (
    <>
      {cautions.length > 0 ? (
        <span aria-hidden="true" className="text-worse">
          ▲{" "}
        </span>
      ) : null}
      {shortWay(placed.optionId)}
    </>
  );
  if (!edit || !way)
    return (
      <span className="plan-chip" {...look}>
        <span aria-hidden="true">{face}</span>
        <span className="sr-only">{text}</span>
      </span>
    );
  const step = (by: 1 | -1) => {
    const at = way.slots.findIndex(({ id }) => id === placed.slotId);
    const next = way.slots[at + by];
    if (next) void edit.place(line, way.id, next);
  };
  const keys = (event: KeyboardEvent) => {
    if (event.key === "Delete") void edit.place(line, way.id, null);
    else if (event.altKey && event.key === "ArrowRight") step(1);
    else if (event.altKey && event.key === "ArrowLeft") step(-1);
    else return;
    event.preventDefault();
  };
  return (
    <>
      <button
        type="button"
        className="plan-chip"
        draggable
        aria-label={text}
        {...look}
        onDragStart={() => onDrag(true)}
        onDragEnd={() => onDrag(false)}
        onKeyDown={keys}
        onClick={() => setOpen(true)}
      >
        {face}
      </button>
      <WayMenu {...{ line, way, edit, open }} onOpen={setOpen} />
    </>
  );
}
