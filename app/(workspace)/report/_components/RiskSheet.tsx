import { StageBadge } from "@/app/_ui/StageBadge";
import { BindingTable } from "@/app/(workspace)/report/_components/BindingTable";
import { Sheet } from "@/app/(workspace)/report/_components/Sheet";
import { SheetTable } from "@/app/(workspace)/report/_components/SheetTable";
import { percent } from "@/lib/view/chance";
import { money, moneyRange } from "@/lib/view/format";
import { count, NOT_KNOWN, plainNumber } from "@/lib/view/number";
import { type FirstLine, firstLines, type ReportInput, reportLoss, stageCounts } from "@/lib/view/report";
import { dueDates } from "@/lib/view/reportDates";
import { stageBadge, stageOrder } from "@/lib/view/stage";
import { day } from "@/lib/view/time";

const LINES_SHOWN = 5;
const DATES_SHOWN = 8;

/** Page 1: what stops cost, which lines come first, what is due, how supply stands. */
export function RiskSheet({ report }: { readonly report: ReportInput }) {
  return (
    <Sheet report={report} page={1} title="Risk">
      <Figures report={report} />
      <First lines={firstLines(report, LINES_SHOWN)} asOf={report.asOf} />
      <BindingTable report={report} />
      <div className="report-columns">
        <Due report={report} />
        <Stages report={report} />
      </div>
    </Sheet>
  );
}

function Figures({ report }: { readonly report: ReportInput }) {
  const { total, isDrawn, shortage, lines, costed, stopsPerYear } = reportLoss(report);
  return (
    <div>
      <p className="text-lg">
        <strong className="text-2xl">{money(total?.mean ?? null)}</strong> expected stop loss in the next
        twelve months
        {total
          ? `, ${moneyRange(total)} ${isDrawn ? "in nine of ten draws" : "with every line at one end at once"}`
          : ""}
        .
      </p>
      <p>
        {shortage !== null && total !== null && total.mean > 0
          ? `${percent(shortage / total.mean)} of it, ${money(shortage)}, because a failure finds no usable spare. `
          : ""}
        {plainNumber(stopsPerYear)} stops a year are expected on {count(lines, "line")}
        {costed < lines
          ? `; on ${count(lines - costed, "line")} the cost per hour is not known, and these are not in the money`
          : ""}
        .
      </p>
    </div>
  );
}

interface FirstProps {
  readonly lines: readonly FirstLine[];
  readonly asOf: string;
}

function First({ lines, asOf }: FirstProps) {
  return (
    <SheetTable
      title="The five lines that lose most"
      heads={[
        { text: "Line" },
        { text: "Stop loss a year", end: true },
        { text: "Range (5–95 %)", end: true },
        { text: "Score", end: true },
        { text: "Driven by" },
        { text: "Shelf likely empty from" },
      ]}
    >
      {lines.map(({ line, loss, drivers }) => (
        <tr key={line.code}>
          <th scope="row">
            {line.code} {line.name}
          </th>
          <td data-align="end">{money(loss.mean)}</td>
          <td data-align="end">{moneyRange(loss)}</td>
          <td data-align="end">{line.result.score.toFixed(1)}</td>
          <td>{drivers.map(({ label, share }) => `${label} ${percent(Math.min(1, share))}`).join(", ")}</td>
          <td>{emptyFrom(line.result.depletionP80, asOf)}</td>
        </tr>
      ))}
      {lines.length === 0 ? (
        <tr>
          <td colSpan={6}>No line has a cost per hour yet.</td>
        </tr>
      ) : null}
    </SheetTable>
  );
}

/** First day the shelf of a part of the line is empty with a chance of four fifths. */
function emptyFrom(on: string | null, asOf: string): string {
  if (on === null) return "not within 5 years";
  return on <= asOf ? "already" : day(on);
}

function Due({ report }: { readonly report: ReportInput }) {
  const dates = dueDates(report);
  const more = dates.length - DATES_SHOWN;
  return (
    <SheetTable
      title="Due within six months"
      heads={[{ text: "Day" }, { text: "What" }, { text: "Of" }, { text: "Units here", end: true }]}
      note={more > 0 ? `and ${count(more, "later date")}; all of them stand with the parts.` : undefined}
    >
      {dates.slice(0, DATES_SHOWN).map(({ on, what, of, units, passed }) => (
        <tr key={`${on}${what}${of}`}>
          <td>
            {day(on)}
            {passed ? " – passed" : ""}
          </td>
          <td>{what}</td>
          <th scope="row">{of}</th>
          <td data-align="end">{plainNumber(units)}</td>
        </tr>
      ))}
      {dates.length === 0 ? (
        <tr>
          <td colSpan={4}>Nothing with a sourced date. Undated parts may still end unannounced.</td>
        </tr>
      ) : null}
    </SheetTable>
  );
}

function Stages({ report }: { readonly report: ReportInput }) {
  const counts = stageCounts(report).sort((a, b) => orderOf(a.stage) - orderOf(b.stage));
  const units = counts.reduce((sum, one) => sum + one.units, 0);
  return (
    <SheetTable
      title="How supply stands"
      heads={[
        { text: "Supply stage" },
        { text: "Parts", end: true },
        { text: "Units", end: true },
        { text: "Share", end: true },
      ]}
    >
      {counts.map(({ stage, parts, units: here }) => (
        <tr key={stage}>
          <th scope="row">
            {stage === "unidentified" ? "Not identified" : <StageBadge {...stageBadge(stage)} />}
          </th>
          <td data-align="end">{stage === "unidentified" ? NOT_KNOWN : plainNumber(parts)}</td>
          <td data-align="end">{plainNumber(here)}</td>
          <td data-align="end">{percent(here / units)}</td>
        </tr>
      ))}
    </SheetTable>
  );
}

function orderOf(stage: ReturnType<typeof stageCounts>[number]["stage"]): number {
  return stage === "unidentified" ? -1 : stageOrder(stage);
}
