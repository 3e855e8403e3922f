import { DutyMark } from "@/app/(workspace)/_components/DutyMark";
import { DocTables } from "@/app/(workspace)/plans/[id]/request/_components/DocTables";
import { Signatures } from "@/app/(workspace)/plans/[id]/request/_components/Signatures";
import { money, moneySpan } from "@/lib/view/format";
import { type BoardLine, type BoardPage, type Considered, costOfLine } from "@/lib/view/planBoard";
import { lineTables } from "@/lib/view/planRequest";
import { day } from "@/lib/view/time";

interface LineRequestProps {
  readonly page: BoardPage;
  readonly line: BoardLine;
  readonly considered: Considered | undefined;
}

/** The capital request of one line: what is asked and why, when it is paid, what else was considered. */
export function LineRequest({ page, line, considered }: LineRequestProps) {
  const { code, name, stopLoss, without, with: left, pin, pinReason, acceptance, duties } = line;
  return (
    <article className="request-sheet" aria-label={`Capital request of ${code}`}>
      <header className="double-rule pt-2">
        <h2 className="font-semibold text-xl">
          {code} {name}: capital request
        </h2>
        <p className="text-sm">
          Part of {page.name}, issue {page.issue} · data as of {day(page.view.asOf)}
        </p>
      </header>
      <p className="measure mt-3">
        Requested: {money(costOfLine(line))}, typical. The line is expected to lose {moneySpan(stopLoss)} in
        its first year if nothing is done, and {money(without)} over {page.view.horizonMonths} months; with
        the whole plan {money(left)}. What other lines gain by its parts is in the worth of the plan, not
        here.
      </p>
      {duties.map((duty) => (
        <p key={duty.title} className="mt-1">
          <DutyMark {...duty} /> {duty.title}, {day(duty.dueOn)}
        </p>
      ))}
      {pin === "none" ? null : (
        <p className="mt-1">
          Pinned {pin} by hand: {pinReason}
        </p>
      )}
      {acceptance ? (
        <p className="mt-1">
          Risk held by {acceptance.acceptedBy} until {day(acceptance.until)}.
        </p>
      ) : null}
      <DocTables tables={lineTables(line, considered)} />
      <Signatures />
    </article>
  );
}
