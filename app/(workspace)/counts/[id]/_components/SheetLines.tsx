"use client";

import { useState } from "react";
import { orOffline } from "@/app/_ui/draft/orOffline";
import { TextField } from "@/app/_ui/field/TextField";
import { UndoBar } from "@/app/_ui/UndoBar";
import { useDone } from "@/app/(workspace)/_components/useDone";
import { LineForm } from "@/app/(workspace)/counts/[id]/_components/LineForm";
import { addThisFind, dropThisFind } from "@/app/(workspace)/counts/actions";
import { type CountLine, lineTitle } from "@/lib/view/count";

interface SheetLinesProps {
  readonly countId: string;
  readonly lines: readonly CountLine[];
}

const folded = (text: string) => text.toUpperCase().replace(/[^\p{L}\p{N}]/gu, "");

/** The lines of an open sheet, along the bins, narrowed by what is typed. */
export function SheetLines({ countId, lines }: SheetLinesProps) {
  const [sought, setSought] = useState("");
  const { done, tell, undo, close } = useDone();
  const shown = (line: CountLine) => folded(lineTitle(line)).includes(folded(sought));
  const drop = async (line: CountLine) => {
    const { id: lineId, version, plate, part, bin, revision, entry } = line;
    const made = await orOffline(dropThisFind({ countId, lineId, version }));
    const again = () => addThisFind({ countId, plate: plate || (part ?? ""), bin, revision, entry });
    tell(
      made.ok
        ? { message: `${lineTitle(line)} taken off the sheet.`, undo: again }
        : { message: made.error.reason },
    );
  };
  return (
    <div className="no-print">
      <div className="mb-3 max-w-sm">
        <TextField
          name="sought"
          type="search"
          label="Find a bin or part"
          value={sought}
          onChange={({ target }) => setSought(target.value)}
        />
      </div>
      {lines.map((line) => (
        <div key={line.id} hidden={!shown(line)}>
          <LineForm countId={countId} line={line} {...(line.isFind ? { onDrop: drop } : {})} />
        </div>
      ))}
      {lines.some(shown) ? null : <p>No line holds “{sought}”. Clear the field to see all.</p>}
      <UndoBar message={done?.message ?? null} {...(done?.undo ? { onUndo: undo } : {})} onClose={close} />
    </div>
  );
}
