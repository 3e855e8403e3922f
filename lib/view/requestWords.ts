import { boardLead } from "@/lib/view/boardWords";
import { money, moneySpan } from "@/lib/view/format";
import { NOT_KNOWN, plainNumber } from "@/lib/view/number";
import { planStatusWords } from "@/lib/view/plan";
import { type BoardLine, type BoardPage, costOfLine } from "@/lib/view/planBoard";
import { type DocTable, lineTables, requestTables } from "@/lib/view/planRequest";
import { day } from "@/lib/view/time";

/** What the reader of a request has to bear in mind. */
export const REQUEST_CAUTIONS = [
  "Costs are estimates from norms of common practice and list prices; low and high are the ends of common practice, not limits. Get quotations before money is promised.",
  "The worth is that of the whole plan on the whole group: spares are shared and drives set free protect other lines, so it is not the sum of the lines. A chance of 3 % happens.",
  "Never use these figures to justify running an unsafe machine.",
  "A change of a safety-related part, a stop or a speed needs a new assessment and validation; a retrofit may be a substantial modification. A named competent person decides.",
  "Motor sizing, panel design and short-circuit rating may need licensed engineers; a retrofit can change fault levels and arc-flash labels. Work on drives and cabinets is for qualified persons.",
] as const;

/** Who signs; functions, not names. */
export const SIGNING_ROLES = [
  "Prepared by",
  "Plant manager",
  "Finance controller",
  "Group engineering manager",
] as const;

/** A cell of a document as it is read; a number or a day that is not there is not known. */
export function cellText(
  value: string | number | null,
  column: DocTable["columns"][number] | undefined,
): string {
  const { kind = "text", title = "" } = column ?? {};
  if (value === null) return kind === "text" ? "" : NOT_KNOWN;
  if (kind === "date") return day(String(value));
  if (typeof value === "number") return title === "Year" ? String(value) : plainNumber(value);
  return value;
}

/** A sheet of a capital request: of the plan as a whole, or of one line. */
export interface RequestSheet {
  readonly title: string;
  readonly about: string;
  readonly sentences: readonly string[];
  readonly tables: readonly DocTable[];
}

/** The sheet of the plan as a whole. */
export function planSheet(page: BoardPage): RequestSheet {
  const { name, issue, status, frozenOn, createdBy, view } = page;
  const kept = frozenOn ? `kept as it stood on ${day(frozenOn)}` : "not put forward yet";
  return {
    title: `Capital request: ${name}, issue ${issue}`,
    about: `${planStatusWords(status)}, ${kept} · prepared by ${createdBy} · data as of ${day(view.asOf)}`,
    sentences: [boardLead(view)],
    tables: requestTables(page),
  };
}

/** The sheet of one line: what is asked and why, when it is paid, what else was considered. */
export function lineSheet(page: BoardPage, line: BoardLine): RequestSheet {
  const { code, name, stopLoss, without, with: left, pin, pinReason, acceptance } = line;
  const considered = page.considered.find(({ lineId }) => lineId === line.lineId);
  return {
    title: `${code} ${name}: capital request`,
    about: `Part of ${page.name}, issue ${page.issue} · data as of ${day(page.view.asOf)}`,
    sentences: [
      `Requested: ${money(costOfLine(line))}, typical. The line is expected to lose ${moneySpan(stopLoss)} in its first year if nothing is done, and ${money(without)} over ${page.view.horizonMonths} months; with the whole plan ${money(left)}. What other lines gain by its parts is in the worth of the plan, not here.`,
      ...(pin === "none" ? [] : [`Pinned ${pin} by hand: ${pinReason}`]),
      ...(acceptance ? [`Risk held by ${acceptance.acceptedBy} until ${day(acceptance.until)}.`] : []),
    ],
    tables: lineTables(line, considered),
  };
}

/** The lines a plan asks money for. */
export const requestedLines = ({ view }: BoardPage): BoardLine[] =>
  view.lines.filter(({ placed }) => placed.length > 0);
