import { percent } from "@/lib/view/chance";
import { money, moneyRange } from "@/lib/view/format";
import { NBSP, NOT_KNOWN, plainNumber } from "@/lib/view/number";
import { localMoney } from "@/lib/view/projectMoney";
import type {
  CellKind,
  ReportBasis,
  ReportBlock,
  ReportCell,
  ReportHeadline,
  ReportRow,
  ReportTable,
} from "@/lib/view/reportDocument";
import { stageView } from "@/lib/view/stage";
import { day } from "@/lib/view/time";

/** A cell as its text, the same wherever it is drawn; a span is only its range, the mean has its own cell. */
export function cellText(cell: ReportCell): string {
  switch (cell.kind) {
    case "text":
      return cell.text;
    case "money":
      return money(cell.value);
    case "span":
      return moneyRange(cell.span);
    case "local":
      return cell.value === null ? "not defined" : localMoney(cell.value, cell.currency);
    case "number":
      return cell.value === null ? (cell.none ?? NOT_KNOWN) : plainNumber(cell.value, cell.places);
    case "share":
      return cell.value === null ? (cell.none ?? NOT_KNOWN) : percent(cell.value);
    case "date":
      return dateText(cell);
    case "pair":
      return pairText(cell);
    case "stage":
      return stageText(cell.stage);
  }
}

function dateText({ on, none, mark }: Extract<ReportCell, { kind: "date" }>): string {
  if (on === null) return none ?? NOT_KNOWN;
  return mark === undefined ? day(on) : `${day(on)} – ${mark}`;
}

function pairText({ values, share, places, none }: Extract<ReportCell, { kind: "pair" }>): string {
  const write = (value: number | null) => {
    if (value === null) return none ?? NOT_KNOWN;
    if (!share) return plainNumber(value, places);
    return places === 0 ? percent(value) : `${plainNumber(100 * value, places)}${NBSP}%`;
  };
  return values.map(write).join(" / ");
}

function stageText(stage: Extract<ReportCell, { kind: "stage" }>["stage"]): string {
  if (stage === null) return "Not identified";
  const { letter, name } = stageView(stage);
  return `${letter} ${name}`;
}

const AT_END: ReadonlySet<CellKind> = new Set(["money", "local", "number", "share", "pair"]);

/** Whether cells of a kind stand at the end of their column, as numbers do. */
export function standsAtEnd(kind: CellKind): boolean {
  return AT_END.has(kind);
}

/** The cells of a row with their columns, with where each leads: its own page, else the table's. */
export function cellsOf(table: ReportTable, row: ReportRow) {
  return table.columns.map((column, place) => {
    const cell: ReportCell = row.cells[place] ?? { kind: "text", text: "" };
    return { column, cell, text: cellText(cell), href: cell.href ?? table.href };
  });
}

/** Share of a table's width that each of its columns takes, in order. */
export function columnShares({ columns }: Pick<ReportTable, "columns">): number[] {
  const whole = columns.reduce((sum, { width }) => sum + width, 0);
  return columns.map(({ width }) => width / whole);
}

/** Upper end of the scale that all spans of a table share, EUR; 0 where there are none. */
export function spanScale({ rows }: Pick<ReportTable, "rows">): number {
  const ends = rows.flatMap(({ cells }) =>
    cells.map((cell) => (cell.kind === "span" && cell.span ? cell.span.high : 0)),
  );
  return Math.max(0, ...ends);
}

/** The middle of a loss as its two parts, in words; null where they are not known. */
export function shortageText({ loss, shortage }: Pick<ReportHeadline, "loss" | "shortage">): string | null {
  if (loss === null || shortage === null) return null;
  return `${money(loss.mean - shortage)} with a spare at hand, ${money(shortage)} for want of one`;
}

/** What the figures rest on, in one line. */
export function basisText({ asOf, engine, dataVersion, assumptions, seed }: ReportBasis): string {
  return `As of ${day(asOf)} · engine ${engine} · data version ${dataVersion} · ${assumptions} · seed ${seed} · money in EUR at the budget rate unless said otherwise`;
}

/** Blocks that stand beside each other together, the others alone. */
export function inPairs(blocks: readonly ReportBlock[]): ReportBlock[][] {
  const rows: ReportBlock[][] = [];
  for (const block of blocks) {
    const last = rows.at(-1);
    const [first, second] = last ?? [];
    if (last && block.half && first?.half && !second) last.push(block);
    else rows.push([block]);
  }
  return rows;
}
