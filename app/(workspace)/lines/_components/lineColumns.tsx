import { AsOfLink } from "@/app/_ui/AsOfLink";
import type { Column } from "@/app/_ui/DataTable/column";
import { StageBadge } from "@/app/_ui/StageBadge";
import { DutyMark } from "@/app/(workspace)/_components/DutyMark";
import { CostCell } from "@/app/(workspace)/lines/_components/CostCell";
import { FirmwareCell } from "@/app/(workspace)/lines/_components/FirmwareCell";
import { LossBar } from "@/app/(workspace)/lines/_components/LossBar";
import { PlaceCell } from "@/app/(workspace)/lines/_components/PlaceCell";
import { ScoreParts } from "@/app/(workspace)/lines/_components/ScoreParts";
import { percent } from "@/lib/view/chance";
import { money, moneyRange, thousands } from "@/lib/view/format";
import { costDoubt, type RankingOf } from "@/lib/view/lineRanking";
import type { LineTotals, RankedBy } from "@/lib/view/lineTotals";
import { significant } from "@/lib/view/number";
import { obligationWords } from "@/lib/view/obligation";
import type { RankingRow } from "@/lib/view/rankingRows";
import { stageBadge, stageOrder, stageView } from "@/lib/view/stage";
import { day } from "@/lib/view/time";

/** What the columns need besides the rows. */
export interface ColumnTerms {
  readonly by: RankedBy;
  readonly ranking: RankingOf<RankingRow>;
  readonly totals: LineTotals;
}

type LineColumn = Column<RankingRow>;

/** The columns of the ranking, the leading rank first. */
export function lineColumns(terms: ColumnTerms): LineColumn[] {
  const ranks = rankColumns(terms);
  const [leading, other] = terms.by === "loss" ? ranks : [ranks[1], ranks[0]];
  // What is looked at first fits a screen of 1 440 px; the rest follows.
  return [
    nameColumn(terms),
    leading,
    ...placeColumns(terms),
    ...lossColumns(terms),
    rankSpanColumn(terms),
    scoreColumn(),
    ...supplyColumns(),
    other,
    firstFiveColumn(),
    ...partColumns(terms),
    ...controllerColumns(terms),
    ...hiddenColumns(terms),
  ];
}

function nameColumn({ totals }: ColumnTerms): LineColumn {
  return {
    key: "line",
    header: "Line",
    value: (line) => line.code,
    cell: (line) => (
      <span className="whitespace-nowrap">
        {line.code}
        {line.duties.map((duty) => (
          <span key={`${duty.dueOn}${duty.title}`} className="ml-1">
            <DutyMark {...duty} />
          </span>
        ))}
      </span>
    ),
    filter: "text",
    width: "5rem",
    foot: `Sum of ${totals.lines}`,
  };
}

function rankColumns({ by, ranking }: ColumnTerms): readonly [LineColumn, LineColumn] {
  const unit = `of ${ranking.groupLines}`;
  const rank = { unit, align: "end" } as const;
  return [
    {
      ...{ ...rank, key: "money", header: "Money rank", priority: by === "loss" ? 1 : 2 },
      value: (line) => line.rankByLoss,
    },
    {
      ...{ ...rank, key: "score-rank", header: "Score rank", priority: by === "score" ? 1 : 2 },
      value: (line) => line.rankByScore,
    },
  ];
}

function placeColumns({ ranking }: ColumnTerms): LineColumn[] {
  const several = new Set(ranking.lines.map((line) => line.siteCode)).size > 1;
  return [
    {
      ...{ key: "name", header: "Name", filter: "text", width: "6rem" },
      value: (line) => line.name,
      cell: (line) => <span translate="no">{line.name}</span>,
    },
    {
      key: "site",
      header: "Site",
      value: (line) => line.siteCode,
      word: (line) => `${line.siteCode} ${line.siteName}`,
      filter: several ? "choice" : "text",
      // The line's code begins with it.
      hidden: true,
    },
  ];
}

function lossColumns({ ranking, totals }: ColumnTerms): LineColumn[] {
  const max = Math.max(0, ...ranking.lines.map((line) => line.stopLoss?.high ?? 0));
  const range =
    totals.stopLoss === null || totals.lowest === null || totals.highest === null
      ? null
      : { mean: totals.stopLoss, low: totals.lowest, high: totals.highest };
  return [
    {
      ...{ key: "loss", header: "Stop loss", unit: "k€ a year", align: "end", priority: 1 },
      value: (line) => line.stopLoss?.mean ?? null,
      cell: (line) => thousands(line.stopLoss?.mean ?? null),
      foot: thousands(totals.stopLoss),
    },
    {
      ...{ key: "span", header: "Base, shortage and span", unit: `scale to ${money(max)}` },
      value: (line) => line.stopLoss?.high ?? null,
      cell: (line) => (
        <LossBar
          span={line.stopLoss}
          baseLoss={line.baseLoss}
          shortageLoss={line.shortageLoss}
          max={max}
          assumed={costDoubt(line.cost, ranking.asOf) !== null}
        />
      ),
      foot:
        range === null
          ? ""
          : `${moneyRange(range)}, ${totals.isDrawn ? "nine of ten draws" : "all low or all high"}`,
    },
  ];
}

function rankSpanColumn({ ranking }: ColumnTerms): LineColumn {
  return {
    ...{ key: "rank-span", header: "Rank span", unit: "nine of ten draws" },
    value: (line) => line.place?.span.mid ?? null,
    cell: (line) => <PlaceCell place={line.place} lines={ranking.groupLines} />,
  };
}

function firstFiveColumn(): LineColumn {
  return {
    ...{ key: "first-five", header: "In the first five", unit: "chance", align: "end", priority: 3 },
    value: (line) => line.place?.firstFive ?? null,
    cell: (line) => percent(line.place?.firstFive ?? null),
  };
}

function scoreColumn(): LineColumn {
  return {
    ...{ key: "score", header: "Score", unit: "0 to 100", align: "end", priority: 1 },
    value: (line) => line.score,
    cell: (line) => significant(line.score, 3),
  };
}

function partColumns({ totals }: ColumnTerms): LineColumn[] {
  return [
    {
      ...{ key: "parts", header: "Score in parts", width: "12rem" },
      value: (line) => line.scoreParts.spares,
      cell: (line) => <ScoreParts score={line.score} parts={line.scoreParts} />,
    },
    {
      ...{ key: "stops", header: "Stops", unit: "a year", align: "end", priority: 3 },
      value: (line) => line.stopsPerYear,
      cell: (line) => significant(line.stopsPerYear, 2),
      foot: significant(totals.stopsPerYear, 3),
    },
  ];
}

function supplyColumns(): LineColumn[] {
  return [
    {
      ...{ key: "stage", header: "Supply stage", filter: "choice" },
      value: (line) => stageOrder(line.worstStage),
      word: (line) => stageView(line.worstStage).name,
      cell: (line) => <StageBadge {...stageBadge(line.worstStage)} />,
    },
    {
      ...{ key: "empty", header: "First shelf empty", unit: "80 % chance", width: "6.5rem" },
      filter: "text",
      value: (line) => line.depletionP80,
      word: (line) => line.depletionPart?.label ?? "none computed",
      cell: (line) => <DepletionCell line={line} />,
    },
  ];
}

function DepletionCell({ line }: { readonly line: RankingRow }) {
  if (line.depletionP80 === null || line.depletionPart === null)
    return <span className="text-ink-3">not within 5 years</span>;
  const { id, label } = line.depletionPart;
  return (
    <span className="inline-grid">
      <time dateTime={line.depletionP80}>{day(line.depletionP80)}</time>
      {id === null ? label : <AsOfLink href={`/parts/${id}`}>{label}</AsOfLink>}
    </span>
  );
}

function controllerColumns({ ranking }: ColumnTerms): LineColumn[] {
  return [
    {
      ...{ key: "controller", header: "Lead controller", filter: "text", priority: 3, width: "11rem" },
      value: (line) => line.control.lead?.model ?? null,
      cell: (line) => <FirmwareCell control={line.control} />,
    },
    {
      ...{ key: "cost", header: "Cost of stop", unit: "€ an hour", align: "end", priority: 3 },
      value: (line) => line.cost.perHour,
      cell: (line) => <CostCell cost={line.cost} asOf={ranking.asOf} />,
    },
  ];
}

function hiddenColumns({ ranking, totals }: ColumnTerms): LineColumn[] {
  return [
    {
      ...{ key: "base", header: "Base part", unit: "k€ a year", align: "end", hidden: true },
      value: (line) => line.baseLoss,
      cell: (line) => thousands(line.baseLoss),
      foot: thousands(totals.baseLoss),
    },
    {
      ...{ key: "shortage", header: "Shortage part", unit: "k€ a year", align: "end", hidden: true },
      value: (line) => line.shortageLoss,
      cell: (line) => thousands(line.shortageLoss),
      foot: thousands(totals.shortageLoss),
    },
    {
      ...{ key: "floor", header: "Firmware floor", hidden: true, filter: "choice" },
      value: (line) => line.control.floor,
    },
    {
      ...{ key: "approval", header: "Cost approval", hidden: true, filter: "choice" },
      value: (line) => costDoubt(line.cost, ranking.asOf) ?? "Approved",
    },
    {
      ...{ key: "binding", header: "Binding date", unit: "24 months", hidden: true, filter: "text" },
      value: (line) => line.duties[0]?.dueOn ?? null,
      word: ({ duties: [first] }) => (first ? obligationWords(first.kind).name : "none on record"),
      cell: ({ duties: [first] }) =>
        first ? `${obligationWords(first.kind).name} ${day(first.dueOn)}` : "none on record",
    },
  ];
}
