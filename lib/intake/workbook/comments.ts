import { plainText } from "@/lib/intake/reading";
import { readPart, readRelations, type SheetPart, type Workbook } from "@/lib/intake/workbook/parts";

/** A remark fastened to a cell. */
export interface CellComment {
  readonly place: string;
  readonly text: string;
}

const LONGEST = 120;

/** The remarks of a sheet's cells, in the order of the file; the rest of a thread is left out of the texts. */
export function readComments({ archive }: Workbook, { part }: SheetPart): CellComment[] {
  const found = new Map<string, string>();
  const parts = [...readRelations(archive, part).values()].filter(({ kind }) =>
    /^(?:comments|threadedComment)$/.test(kind),
  );
  for (const one of parts) {
    let place = "";
    let text = "";
    readPart(archive, one.part, {
      open: (name, attribute) => {
        if (name !== "comment" && name !== "threadedComment") return;
        place = attribute("ref") ?? "";
        text = "";
      },
      text: (more) => {
        if (text.length < LONGEST) text += more;
      },
      close: (name) => {
        if (name !== "comment" && name !== "threadedComment") return;
        // A thread stands a second time among the plain remarks, behind a note for older programs.
        if (name === "threadedComment" || !found.has(place))
          found.set(place, plainText(text).slice(0, LONGEST));
      },
    });
  }
  return [...found].map(([place, text]) => ({ place, text }));
}
