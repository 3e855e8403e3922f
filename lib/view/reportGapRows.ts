import { approvalEnded, isUnapproved } from "@/lib/view/lineRanking";
import { type ReportInput, stageCounts } from "@/lib/view/report";

/** Something nobody has recorded: how many of how many. */
export interface GapRow {
  readonly what: string;
  readonly missing: number;
  readonly of: number;
}

/** The gaps in the data a report rests on, those without any left in. */
export function reportGapRows(input: ReportInput): GapRow[] {
  const { gaps, lines, asOf } = input;
  const stages = stageCounts(input);
  const units = stages.reduce((sum, one) => sum + one.units, 0);
  const unitsAt = (stage: (typeof stages)[number]["stage"]) =>
    stages.find((one) => one.stage === stage)?.units ?? 0;
  const doubtful = lines.filter(({ cost }) => cost === null || isUnapproved(cost, asOf));
  const ended = lines.filter(({ cost }) => cost !== null && approvalEnded(cost, asOf));
  return [
    { what: "Controllers, firmware not known", missing: gaps.unknownFirmware, of: gaps.controllers },
    { what: "Stock lots not counted", missing: gaps.uncounted, of: gaps.stockLots },
    { what: "Lines, cost per hour not approved", missing: doubtful.length, of: lines.length },
    { what: "Lines, approval of the cost run out", missing: ended.length, of: lines.length },
    { what: "Units whose supply is undated", missing: unitsAt("undated"), of: units },
    { what: "Units not identified", missing: unitsAt("unidentified"), of: units },
  ];
}
