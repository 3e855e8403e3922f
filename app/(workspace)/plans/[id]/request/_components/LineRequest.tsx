import { DutyMark } from "@/app/(workspace)/_components/DutyMark";
import { DocTables } from "@/app/(workspace)/plans/[id]/request/_components/DocTables";
import { Signatures } from "@/app/(workspace)/plans/[id]/request/_components/Signatures";
import type { BoardLine, BoardPage } from "@/lib/view/planBoard";
import { lineSheet } from "@/lib/view/requestWords";
import { day } from "@/lib/view/time";

interface LineRequestProps {
  readonly page: BoardPage;
  readonly line: BoardLine;
}

/** The capital request of one line: what is asked and why, when it is paid, what else was considered. */
export function LineRequest({ page, line }: LineRequestProps) {
  const { title, about, sentences, tables } = lineSheet(page, line);
  const [asked, ...others] = sentences;
  return (
    <article className="request-sheet" aria-label={`Capital request of ${line.code}`}>
      <header className="double-rule pt-2">
        <h2 className="font-semibold text-xl">{title}</h2>
        <p className="text-sm">{about}</p>
      </header>
      <p className="measure mt-3">{asked}</p>
      {line.duties.map((duty) => (
        <p key={duty.title} className="mt-1">
          <DutyMark {...duty} /> {duty.title}, {day(duty.dueOn)}
        </p>
      ))}
      {others.map((sentence) => (
        <p key={sentence} className="mt-1">
          {sentence}
        </p>
      ))}
      <DocTables tables={tables} />
      <Signatures />
    </article>
  );
}
