import { AsOfLink } from "@/app/_ui/AsOfLink";
import type { Column } from "@/app/_ui/DataTable/column";
import { StageBadge } from "@/app/_ui/StageBadge";
import type { LineResult } from "@/lib/risk/evaluation";
import { percent } from "@/lib/view/chance";
import { thousands } from "@/lib/view/format";
import { supplyDate } from "@/lib/view/lineDates";
import type { Driver } from "@/lib/view/lineDossier";
import { itemClassName } from "@/lib/view/linePart";
import { plainNumber, quantity, significant } from "@/lib/view/number";
import { stageBadge, stageOrder, stageView } from "@/lib/view/stage";
import { day } from "@/lib/view/time";

interface DriverTerms {
  readonly code: string;
  readonly result: LineResult;
  readonly showsAmounts: boolean;
}

type DriverColumn = Column<Driver>;

const sumOf = ({ baseLoss, shortageLoss }: Driver) =>
  baseLoss === null || shortageLoss === null ? null : baseLoss + shortageLoss;

/** The columns of the drivers table; the feet are the line's own figures. */
export function driverColumns({ code, result, showsAmounts }: DriverTerms): DriverColumn[] {
  const [loss, share, ...parts] = moneyColumns(result);
  const points = pointsColumn(result);
  const [first, last] = showsAmounts
    ? [
        [loss, share],
        [...parts, points],
      ]
    : [[points], []];
  return [...partColumns(), ...first, ...supplyColumns(), openColumn(code), ...rateColumns(result), ...last];
}

function partColumns(): DriverColumn[] {
  return [
    {
      ...{ key: "part", header: "Part", filter: "text", foot: "Line", width: "7rem" },
      value: (one) => one.label,
      cell: (one) => <span className="whitespace-nowrap">{one.label}</span>,
    },
    {
      ...{ key: "kind", header: "Kind", filter: "choice", priority: 3 },
      value: (one) => itemClassName(one.itemClass),
    },
    {
      key: "family",
      header: "Family",
      value: (one) => one.part?.family ?? null,
      filter: "text",
      hidden: true,
    },
    { key: "units", header: "Units", align: "end", value: (one) => one.units },
  ];
}

function moneyColumns(result: LineResult): [DriverColumn, DriverColumn, ...DriverColumn[]] {
  const loss = result.stopLoss?.mean ?? null;
  const share = (one: Driver) => {
    const sum = sumOf(one);
    return sum === null || loss === null || loss === 0 ? null : Math.min(1, sum / loss);
  };
  const money = { unit: "k€ a year", align: "end" } as const;
  return [
    {
      ...{ ...money, key: "loss", header: "Stop loss", priority: 1 },
      value: sumOf,
      cell: (one) => thousands(sumOf(one)),
      foot: thousands(loss),
    },
    {
      ...{ key: "share", header: "Share of loss", align: "end" },
      value: share,
      cell: (one) => percent(share(one)),
      foot: loss === null ? "" : percent(1),
    },
    {
      ...{ ...money, key: "base", header: "Base part", priority: 3 },
      value: (one) => one.baseLoss,
      cell: (one) => thousands(one.baseLoss),
      foot: thousands(result.baseLoss),
    },
    {
      ...{ ...money, key: "shortage", header: "Shortage part", priority: 3 },
      value: (one) => one.shortageLoss,
      cell: (one) => thousands(one.shortageLoss),
      foot: thousands(result.shortageLoss),
    },
  ];
}

function pointsColumn(result: LineResult): DriverColumn {
  return {
    ...{ key: "points", header: "Share of score", align: "end" },
    value: (one) => one.share,
    cell: (one) => percent(Math.min(1, one.share)),
    foot: significant(result.score, 3),
  };
}

function rateColumns(result: LineResult): DriverColumn[] {
  return [
    {
      ...{ key: "failures", header: "Failures", unit: "a year", align: "end", priority: 3 },
      value: (one) => one.failuresPerYear,
      cell: (one) => significant(one.failuresPerYear, 2),
      foot: significant(result.stopsPerYear, 2),
    },
    {
      ...{ key: "rate", header: "Failure rate", unit: "a unit-year; failures in unit-years", width: "11rem" },
      value: (one) => (one.units === 0 ? null : one.failuresPerYear / one.units),
      cell: (one) => <RateCell driver={one} />,
    },
    {
      ...{ key: "hours", header: "Stop", unit: "h with / without spare", align: "end", priority: 3 },
      value: (one) => one.hoursWithoutSpare,
      cell: (one) => `${significant(one.hoursWithSpare, 2)} / ${significant(one.hoursWithoutSpare, 2)}`,
    },
  ];
}

function RateCell({ driver }: { readonly driver: Driver }) {
  const { units, failuresPerYear, atSite, pool } = driver;
  const seen = (events: number, years: number) => `${events} in ${plainNumber(years)}`;
  return (
    <span className="inline-grid">
      {units === 0 ? "no units" : significant(failuresPerYear / units, 2)}
      <span className="whitespace-nowrap text-ink-2 text-xs">
        {`${seen(atSite.failures, atSite.unitYears)} here`}
        {pool === null ? "" : `, ${seen(pool.failure.events, pool.failure.unitYears)} in all`}
      </span>
    </span>
  );
}

function supplyColumns(): DriverColumn[] {
  return [
    {
      ...{ key: "stage", header: "Supply stage", filter: "choice", width: "10rem" },
      value: (one) => (one.pool === null ? 0 : stageOrder(one.pool.stage)),
      word: (one) => stageView(one.pool?.stage ?? "undated").name,
      cell: (one) => <StageCell driver={one} />,
    },
    {
      ...{ key: "spares", header: "Usable spares", unit: "here / other sites", align: "end" },
      value: (one) => one.pool?.usable ?? null,
      cell: (one) =>
        one.pool === null
          ? "not known"
          : `${quantity(one.pool.here.usable)} / ${quantity(one.pool.elsewhere.usable)}`,
    },
    {
      ...{ key: "chance", header: "No spare", unit: "chance, 12 months", align: "end", priority: 1 },
      value: (one) => one.noSpare,
      cell: (one) => percent(one.noSpare),
    },
  ];
}

function StageCell({ driver }: { readonly driver: Driver }) {
  const stage = driver.pool?.stage ?? "undated";
  const date = driver.part === null ? null : supplyDate(driver.part.dates, stage);
  return (
    <span className="inline-grid">
      <StageBadge {...stageBadge(stage)} />
      {date === null ? null : (
        <span className="text-ink-2 text-xs">
          {date.what} <time dateTime={date.on}>{day(date.on)}</time>
        </span>
      )}
    </span>
  );
}

function openColumn(code: string): DriverColumn {
  return {
    ...{ key: "open", header: "Arithmetic", priority: 2 },
    value: (one) => one.label,
    cell: (one) => (
      <AsOfLink
        href={`/lines/${code}?part=${encodeURIComponent(one.poolId)}#arithmetic`}
        aria-label={`Arithmetic of ${one.label}`}
      >
        Open
      </AsOfLink>
    ),
  };
}
