import { isoWeekText } from "@/lib/kernel/isoWeek";
import { dateKindName } from "@/lib/view/datesAhead";
import { count, plainNumber } from "@/lib/view/number";
import type { ReportBasis, ReportDocument, ReportTable } from "@/lib/view/reportDocument";
import { cautions } from "@/lib/view/reportMonth";
import { column, pair, tableOf, words } from "@/lib/view/reportTable";
import { baseWords, type ReviewFigures, transferWay, worseWords } from "@/lib/view/review";
import {
  aboutAction,
  actionStateWords,
  isLate,
  type ReviewAction,
  type ReviewBuy,
} from "@/lib/view/reviewRecord";
import { whyText } from "@/lib/view/reviewWords";
import { day } from "@/lib/view/time";

/** What a week's report of a site is made of. */
export interface WeekInput {
  readonly figures: ReviewFigures;
  /** Open ones and those settled since the last review. */
  readonly actions: readonly ReviewAction[];
  readonly buys: readonly ReviewBuy[];
  readonly basis: ReportBasis;
}

const PER_MILLE = 1_000;
const TENTHS = 10;

/** The week of a site: what changed since the last one and why, and what is to be done by whom. */
export function weeklyReport(input: WeekInput): ReportDocument {
  const { figures, basis } = input;
  const { siteCode, siteName, asOf } = figures;
  const review = `/review?site=${encodeURIComponent(siteCode)}`;
  return {
    form: 1,
    kind: "weekly",
    period: isoWeekText(asOf),
    title: `Weekly changes, ${isoWeekText(asOf)}`,
    siteCode,
    scope: `${siteCode} ${siteName}`,
    basis,
    headline: {
      ...{ loss: null, shortage: null, words: "", href: review },
      sentences: [weekLead(input)],
    },
    pages: [
      {
        title: "The week",
        blocks: [
          worseTable(figures, review),
          soonTable(figures, review),
          actionsTable(input, review),
          buysTable(input, review),
          shelfTable(figures),
        ],
      },
    ],
    cautions: cautions(true),
  };
}

function weekLead({ figures: { worse, better, parts, base, asOf }, actions }: WeekInput): string {
  const open = actions.filter(({ state }) => state === "open");
  const late = open.filter((action) => isLate(action, asOf)).length;
  return (
    `${count(worse.length, "part")} of ${plainNumber(parts)} got worse and ${plainNumber(better)} better since ` +
    `${day(base.asOf)}, ${baseWords(base)}. ${count(open.length, "action is", "actions are")} open, ` +
    `${late === 0 ? "none late" : `${plainNumber(late)} late`}.`
  );
}

function worseTable({ worse }: ReviewFigures, review: string): ReportTable {
  const part = (value: number | null, by: number) => (value === null ? null : value / by);
  return tableOf({
    title: "What got worse",
    href: review,
    columns: [
      column("Part", "text", 3.2),
      column("Stage", "stage", 3),
      column("No spare before / now", "pair", 2.2),
      column("Loss here a year before / now", "pair", 2.8),
      column("Usable here before / now", "pair", 2.2),
      column("Why", "text", 7),
    ],
    rows: worse.map((one) => ({
      key: one.poolId,
      cells: [
        words(one.number, one.href),
        { kind: "stage", stage: one.stage, href: one.href },
        pair([part(one.noSpare.before, PER_MILLE), part(one.noSpare.after, PER_MILLE)], {
          ...{ share: true, places: 1, href: one.href },
        }),
        pair([one.loss.before, one.loss.after], { share: false, places: 0, href: one.href }),
        pair([part(one.usable.before, TENTHS), part(one.usable.after, TENTHS)], {
          ...{ share: false, places: 1, href: one.href },
        }),
        words(whyText(one), one.href),
      ],
    })),
    most: 18,
    things: ["part", "parts"],
    none: "Nothing passed the threshold.",
    note: `${worseWords(true)} Loss in EUR.`,
  });
}

function soonTable({ dates, asOf }: ReviewFigures, review: string): ReportTable {
  return tableOf({
    title: "Orders and repairs that end within 90 days",
    href: review,
    columns: [
      column("Day", "date", 2.6),
      column("What", "text", 3),
      column("Of", "text", 4),
      column("Units", "number", 1.2),
    ],
    rows: dates.map(({ key, kind, on, of, href, units }) => ({
      key,
      cells: [
        { kind: "date", on, href, ...(on < asOf ? { mark: "passed" } : {}) },
        words(dateKindName(kind), href),
        words(of, href),
        { kind: "number", value: units, places: 0, none: "–", href },
      ],
    })),
    ...{ most: 10, things: ["later date", "later dates"], none: "None." },
  });
}

function actionsTable({ actions, figures: { asOf, siteCode } }: WeekInput, review: string): ReportTable {
  return tableOf({
    title: "Actions",
    href: review,
    columns: [
      column("Due on", "date", 2.2),
      column("State", "text", 1.6),
      column("What", "text", 7),
      column("About", "text", 2.4),
      column("Owner", "text", 3),
    ],
    rows: actions.map((action) => {
      const about = aboutAction(action, siteCode);
      return {
        key: action.id,
        cells: [
          { kind: "date", on: action.dueOn },
          words(actionStateWords(action, asOf)),
          words(action.text),
          words(about.text, about.href),
          words(action.owner.name),
        ],
      };
    }),
    ...{ most: 14, things: ["action", "actions"], none: "None is open." },
  });
}

function buysTable({ buys }: WeekInput, review: string): ReportTable {
  return tableOf({
    title: "To be bought, as decided in the open review",
    href: review,
    columns: [
      column("Part", "text", 3),
      column("Pieces", "number", 1.2),
      column("Order by", "date", 2.2),
      column("Why", "text", 7),
    ],
    rows: buys.map(({ id, partId, number, quantity, orderByOn, reason }) => ({
      key: id,
      cells: [
        words(number, `/parts/${partId}`),
        { kind: "number", value: quantity, places: 0 },
        { kind: "date", on: orderByOn },
        words(reason),
      ],
    })),
    ...{ most: 10, things: ["part", "parts"], none: "Nothing is on the list." },
  });
}

/** Repairs that should be back, lots that are held, pieces that may move, in one list. */
function shelfTable({ repairs, holds, transfers, uncounted }: ReviewFigures): ReportTable {
  const late = repairs.map((one) => ({
    ...{ key: one.reference, part: words(one.number, `/parts/${one.partId}`), on: one.dueOn },
    what: `Repair ${one.reference} is overdue`,
  }));
  const held = holds.map((one) => ({
    ...{ key: one.lotId, part: words(one.number, `/parts/${one.partId}`), on: null },
    what: `Held in ${one.bin}${one.note === null ? "" : `: ${one.note}`}`,
  }));
  const moves = transfers.map((one) => ({
    ...{ key: one.id, part: words(one.number, `/pool/${one.partId}`), on: null },
    what: `${count(one.pieces, "piece")} asked for, ${transferWay(one.way)}`,
  }));
  return tableOf({
    title: "Repairs overdue, holds, transfers asked for",
    href: "/spares",
    columns: [column("Part", "text", 3), column("Since", "date", 2), column("What", "text", 8)],
    rows: [...late, ...held, ...moves].map(({ key, part, on, what }) => ({
      key,
      cells: [part, { kind: "date", on, none: "–" }, words(what)],
    })),
    ...{ most: 12, things: ["entry", "entries"], none: "None." },
    note: `${count(uncounted.lots, "lot")} of ${plainNumber(uncounted.of)} not counted for twelve months.`,
  });
}
