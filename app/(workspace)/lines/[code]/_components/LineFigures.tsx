import { EvidenceMark } from "@/app/_ui/EvidenceMark";
import { KeyFigure } from "@/app/_ui/KeyFigure";
import { KeyFigures } from "@/app/_ui/KeyFigures";
import { SpanBar } from "@/app/_ui/SpanBar";
import { StaleMark } from "@/app/_ui/StaleMark";
import { ScoreParts } from "@/app/(workspace)/lines/_components/ScoreParts";
import { HorizonFigure, UnknownFigure } from "@/app/(workspace)/lines/[code]/_components/LossDepth";
import { evidenceMark } from "@/lib/view/evidence";
import { exactMoney, money, moneyRange, moneySpan } from "@/lib/view/format";
import type { LineDossier } from "@/lib/view/lineDossier";
import { approvalEnded, costDoubt } from "@/lib/view/lineRanking";
import { NOT_KNOWN, plainNumber, significant } from "@/lib/view/number";
import { day, hours } from "@/lib/view/time";

/** The figures a line is known by, each with its span, its owner or its evidence. */
export function LineFigures({ line }: { readonly line: LineDossier }) {
  const { result, groupLines } = line;
  const rank = (place: number | null) => (place === null ? "no rank" : `rank ${place} of ${groupLines}`);
  return (
    <KeyFigures>
      {line.showsAmounts ? <LossFigure line={line} rank={rank(line.rankByLoss)} /> : null}
      <UnknownFigure line={line} />
      <HorizonFigure line={line} />
      <KeyFigure
        label="Risk score"
        value={significant(result.score, 3)}
        unit={`of 100, ${rank(line.rankByScore)}`}
        href={`/lines/${line.code}#arithmetic`}
      >
        <ScoreParts score={result.score} parts={result.scoreParts} />
      </KeyFigure>
      {line.showsAmounts ? <CostFigure line={line} /> : null}
      <KeyFigure
        label="Buffer after the line"
        value={line.stored.bufferHours === null ? NOT_KNOWN : hours(Number(line.stored.bufferHours))}
        assumed={line.stored.bufferHours === null}
      >
        {line.stored.bufferHours === null
          ? "Taken as 0 hours: each stop costs from its first minute."
          : "Stock that lets a stop this long cost nothing."}
      </KeyFigure>
      <KeyFigure
        label="Shifts of 8 hours"
        value={line.stored.shiftsPerWeek === null ? NOT_KNOWN : String(line.stored.shiftsPerWeek)}
        unit={line.stored.shiftsPerWeek === null ? "" : "a week, of 21"}
      >
        {`${significant(result.stopsPerYear, 2)} stops expected a year.`}
      </KeyFigure>
    </KeyFigures>
  );
}

function LossFigure({ line, rank }: { readonly line: LineDossier; readonly rank: string }) {
  const { stopLoss, baseLoss, shortageLoss } = line.result;
  const doubt = costDoubt(line.cost, line.asOf);
  return (
    <KeyFigure
      label="Stop loss"
      value={money(stopLoss?.mean ?? null)}
      unit={`a year, ${rank}`}
      assumed={doubt !== null}
      href={`/lines/${line.code}#arithmetic`}
      span={
        stopLoss === null ? null : (
          <>
            {moneyRange(stopLoss)}
            <SpanBar {...stopLoss} max={stopLoss.high} text={moneySpan(stopLoss)} assumed={doubt !== null} />
          </>
        )
      }
    >
      {stopLoss === null
        ? "Enter a cost per hour to see the money."
        : `Base part ${money(baseLoss)}, shortage part ${money(shortageLoss)}.`}
    </KeyFigure>
  );
}

function CostFigure({ line }: { readonly line: LineDossier }) {
  const { cost, stored, site } = line;
  const doubt = costDoubt(cost, line.asOf);
  const stands = cost.approvedOn === null ? "not approved" : `approved on ${day(cost.approvedOn)}`;
  const until = cost.validUntil === null ? "no end stated" : `valid until ${day(cost.validUntil)}`;
  return (
    <KeyFigure
      label="Cost of a stop"
      value={cost.perHour === null ? NOT_KNOWN : `€ ${plainNumber(cost.perHour)}`}
      unit={cost.perHour === null ? "" : "an hour"}
      evidence={<EvidenceMark {...evidenceMark(cost.evidence)} long />}
      assumed={doubt !== null}
      date={`${cost.owner ?? "Nobody answers for it"}; ${stands}; ${until}`}
    >
      {stored.costPerHour === null || site.currency === "EUR"
        ? null
        : `${exactMoney(stored.costPerHour, site.currency)} at the budget rate. `}
      {doubt === null ? null : (
        <strong>
          {approvalEnded(cost, line.asOf) ? <StaleMark text="Expired" /> : null} {doubt}.
        </strong>
      )}
    </KeyFigure>
  );
}
