import type { RegisterKey } from "@/lib/intake/registers";
import type { DirtyFile, ProblemNumber } from "@/seed/dirtyFiles/answerKey";
import { assetSpoils } from "@/seed/dirtyFiles/assetSpoils";
import { type Layout, layDown } from "@/seed/dirtyFiles/layDown";
import { SCAN_HEADERS, SCAN_SPOILS, scanRows } from "@/seed/dirtyFiles/scanRows";
import { type Spoil, spoilRows } from "@/seed/dirtyFiles/spoil";
import { stockSpoils, WORKBOOK_STOCK_SPOILS } from "@/seed/dirtyFiles/stockSpoils";
import { STOP_LOG_SPOILS } from "@/seed/dirtyFiles/stopLog";
import { SURVEY_SPOILS } from "@/seed/dirtyFiles/surveySpoils";
import { assetRegister } from "@/seed/registerFiles/assetRegister";
import { axisRegister } from "@/seed/registerFiles/axisRegister";
import { eventRegister } from "@/seed/registerFiles/eventRegister";
import { HABITS, type Habits } from "@/seed/registerFiles/habits";
import { headerOf } from "@/seed/registerFiles/headers";
import type { RegisterRow } from "@/seed/registerFiles/registerRow";
import { type SiteView, viewSite } from "@/seed/registerFiles/siteView";
import { stockRegister } from "@/seed/registerFiles/stockRegister";
import type { HeldTables } from "@/seed/tables";

const SITES = ["VEL", "OST", "KAR", "PIN", "TAD", "THO"];
const SCANNED = ["VEL", "PIN", "THO"];
/** The site whose stop log is in the set. */
const LOGGED = "PIN";

const TOTALS = { de: "Summe", pl: "Razem", sv: "Summa", en: "Total", es: "Total" } as const;

interface Draft {
  readonly view: SiteView;
  readonly register: Exclude<RegisterKey, "lifecycle">;
  readonly rows: readonly RegisterRow[];
  readonly spoils: readonly Spoil[];
  readonly layout: Layout;
  readonly shuffled?: boolean;
}

function habitsOf(site: string): Habits {
  const habits = HABITS[site];
  if (!habits) throw new RangeError(`site must have habits, got ${site}`);
  return habits;
}

/** Columns in an order of their own, the same each time: every third first. */
function shuffle(fields: readonly string[]): string[] {
  return [0, 1, 2].flatMap((start) => fields.filter((_, index) => index % 3 === start));
}

function problemsOf({ encoding, marked }: Habits, draft: Draft): ProblemNumber[] {
  return [
    ...(encoding !== "utf-8" || marked ? ([9] as const) : []),
    ...(draft.shuffled ? ([24] as const) : []),
    ...(draft.layout.idleColumns ? ([26] as const) : []),
    ...(draft.layout.twice ? ([12] as const) : []),
  ];
}

function make(draft: Draft): DirtyFile {
  const { view, register, rows, spoils, layout, shuffled } = draft;
  const habits = habitsOf(view.site.code);
  const all = Object.keys(rows[0] ?? {});
  const fields = shuffled ? shuffle(all) : all;
  const ending = habits.format === "workbook" ? "xlsx" : "csv";
  return layDown(
    spoilRows(rows, spoils, { register, habits }),
    {
      ...{ name: `${view.site.code}-${register}-dirty.${ending}`, register, habits, fields },
      headers: fields.map((field) =>
        register === "scans" ? (SCAN_HEADERS[field] ?? field) : headerOf(register, habits.language, field),
      ),
      problems: problemsOf(habits, draft),
    },
    layout,
  );
}

const assetRows = (view: SiteView) => assetRegister(view).slice(0, 16);

/** Stops of the lines the asset register of the set tells of. */
function eventRows(view: SiteView): RegisterRow[] {
  const lines = new Set(assetRows(view).map(({ lineCode }) => lineCode));
  return eventRegister(view)
    .filter(({ lineCode }) => lineCode !== undefined && lines.has(lineCode))
    .slice(0, 30);
}

function assetFile(view: SiteView): DirtyFile {
  const { code, currency } = view.site;
  const habits = habitsOf(code);
  return make({
    ...{ view, register: "assets", rows: assetRows(view) },
    spoils: assetSpoils(habits, currency),
    layout: {
      titles: [`Obsolete drives ${code} v7 FINAL`, ""],
      ...{ headings: { 5: "Hall 2" }, blankAfter: [3], twice: [14], total: TOTALS[habits.language] },
      hidden: [2, 3],
    },
  });
}

function stockFile(view: SiteView): DirtyFile {
  const habits = habitsOf(view.site.code);
  const isWorkbook = habits.format === "workbook";
  const own = isWorkbook ? WORKBOOK_STOCK_SPOILS : [];
  const replaced = new Set(own.map(({ row, field }) => `${row} ${field}`));
  const usual = stockSpoils(habits).filter(({ row, field }) => !replaced.has(`${row} ${field}`));
  return make({
    ...{ view, register: "stock", rows: stockRegister(view).slice(0, 24), spoils: [...usual, ...own] },
    shuffled: view.site.code === "KAR",
    layout: {
      titles: [`Stock ${view.site.code}, all shelves`],
      ...{ headings: { 8: "Shelf 4" }, namesBefore: [12], twice: [22], total: TOTALS[habits.language] },
      idleColumns: view.site.code === "TAD" ? 187 : 0,
      ...(isWorkbook ? { groups: { 0: "Place", 2: "Part", 7: "Count" } } : {}),
    },
  });
}

function scanFile(view: SiteView): DirtyFile {
  return make({
    ...{ view, register: "scans", rows: scanRows(view), spoils: SCAN_SPOILS },
    layout: { titles: ["Passive list, switch port 7", ""], twice: [12] },
  });
}

/** The survey of the drives and motors on the machines the asset register of the set tells of. */
function surveyFile(view: SiteView): DirtyFile {
  const machines = new Set(assetRows(view).map(({ lineCode, machineCode }) => `${lineCode} ${machineCode}`));
  const rows = axisRegister(view).filter(({ lineCode, machineCode }) =>
    machines.has(`${lineCode} ${machineCode}`),
  );
  return make({
    ...{ view, register: "axes", rows, spoils: SURVEY_SPOILS },
    layout: { titles: ["Walk-round of October", ""], headings: { 20: "Next machine" }, twice: [30] },
  });
}

function stopLog(view: SiteView): DirtyFile {
  return make({
    ...{ view, register: "events", rows: eventRows(view), spoils: STOP_LOG_SPOILS },
    layout: { titles: ["Stops, all shifts"], headings: { 10: "Night shift" }, twice: [20], blankAfter: [25] },
  });
}

const viewsOf = (tables: HeldTables, sites: readonly string[]) => sites.map((code) => viewSite(tables, code));

/**
 * The register files of a company as they really are: six asset registers, six stock exports, three network
 * lists, a stop log, each with the truth about every row. The same tables give the same bytes.
 */
export function dirtySet(tables: HeldTables): DirtyFile[] {
  return [
    ...viewsOf(tables, SITES).map(assetFile),
    ...viewsOf(tables, SITES).map(stockFile),
    ...viewsOf(tables, SCANNED).map(scanFile),
    ...viewsOf(tables, [LOGGED]).map(stopLog),
  ];
}

/** What one site hands in to begin with, in the order it can be loaded: assets, axis survey, stock, stop log. */
export function dirtySite(tables: HeldTables): DirtyFile[] {
  const view = viewSite(tables, LOGGED);
  return [assetFile(view), surveyFile(view), stockFile(view), stopLog(view)];
}
