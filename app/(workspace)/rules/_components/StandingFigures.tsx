import { AsOfLink } from "@/app/_ui/AsOfLink";
import { KeyFigure } from "@/app/_ui/KeyFigure";
import { KeyFigures } from "@/app/_ui/KeyFigures";
import { count } from "@/lib/view/number";
import type { StandingCounts } from "@/lib/view/standing";

interface StandingFiguresProps {
  readonly counts: StandingCounts;
  /** Lines that were judged. */
  readonly lines: number;
}

/** The picture of the group; each count leads to its lines in the list below. */
export function StandingFigures({ counts, lines }: StandingFiguresProps) {
  const { standings, memoryBlocked, memoryCaution, revisionBlocked, readyWithWorse } = counts;
  return (
    <>
      <KeyFigures>
        {standings.map(({ word, lines: number }) => (
          <Counted key={word} label={word} number={number} column="standing" word={word} />
        ))}
        {memoryBlocked === 0 ? null : (
          <Counted label="Memory blocks the raise" number={memoryBlocked} column="memory" word="blocked" />
        )}
        {memoryCaution === 0 ? null : (
          <Counted
            label="Memory tight after the raise"
            number={memoryCaution}
            column="memory"
            word="caution"
          />
        )}
        {revisionBlocked === 0 ? null : (
          <Counted
            label="Newest spares will not run"
            number={revisionBlocked}
            column="revision"
            word="blocked"
          />
        )}
      </KeyFigures>
      <p className="measure mb-4 text-ink-2 text-sm">
        Of {count(lines, "line")}.{" "}
        {readyWithWorse === 0
          ? ""
          : `On ${readyWithWorse} of those ready another controller stands worse or is not read. `}
        The memory and newest-spares counts overlap the others.
      </p>
    </>
  );
}

interface CountedProps {
  readonly label: string;
  readonly number: number;
  readonly column: string;
  readonly word: string;
}

function Counted({ label, number, column, word }: CountedProps) {
  const query = new URLSearchParams({ [`standing.is.${column}`]: word });
  return (
    <KeyFigure label={label} value={String(number)} unit={number === 1 ? "line" : "lines"}>
      <AsOfLink href={`/rules?${query}`} scroll={false} className="no-print" aria-label={`Show: ${label}`}>
        Show in the list
      </AsOfLink>
    </KeyFigure>
  );
}
