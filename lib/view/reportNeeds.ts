import { compareAmounts } from "@/lib/kernel/money";
import { isUnapproved } from "@/lib/view/lineRanking";
import { partDates } from "@/lib/view/partDates";
import { projectFigures, projectStatusWords } from "@/lib/view/project";
import type { ReportInput, ReportLine } from "@/lib/view/report";
import type { ReportItem } from "@/lib/view/reportDocument";
import { day } from "@/lib/view/time";

type Need = (input: ReportInput, line: ReportLine) => ReportItem | null;

/** What binds comes first, then what is under way, then what waits for somebody; the product's own order. */
const NEEDS: readonly Need[] = [duty, project, held, order, cost];

/** The one thing a line needs next, and the page it is done on. */
export function lineNeed(input: ReportInput, line: ReportLine): ReportItem {
  for (const need of NEEDS) {
    const found = need(input, line);
    if (found) return found;
  }
  return { text: "A way chosen: no project, no decision", href: `/lines/${line.code}/scope` };
}

function duty({ obligations, asOf }: ReportInput, { code }: ReportLine): ReportItem | null {
  const overdue = obligations.find(({ line, dueOn }) => line?.code === code && dueOn < asOf);
  return overdue
    ? { text: `Overdue since ${day(overdue.dueOn)}: ${overdue.title}`, href: `/lines/${code}#binding` }
    : null;
}

function project({ projects, asOf }: ReportInput, { code }: ReportLine): ReportItem | null {
  const found = projects.find(({ lineCode, status }) => lineCode === code && status !== "closed");
  if (!found) return null;
  const { bound, budget } = projectFigures(found, asOf);
  const end = found.endsOn === null ? "no end set" : `to ${day(found.endsOn)}`;
  const over = compareAmounts(bound, budget) > 0 ? ", above its budget" : "";
  return {
    text: `${found.code}: ${projectStatusWords(found.status).toLowerCase()}, ${end}${over}`,
    href: `/projects/${found.code}`,
  };
}

function held({ acceptances, asOf }: ReportInput, { code }: ReportLine): ReportItem | null {
  const found = acceptances.find(({ lineCode }) => lineCode === code);
  if (!found) return null;
  const word = found.until < asOf ? "Decide again: risk was held until" : "Risk held until";
  return { text: `${word} ${day(found.until)}`, href: `/lines/${code}` };
}

/** The part that drives most of the line's loss and can still be ordered. */
function order({ parts, asOf }: ReportInput, { result }: ReportLine): ReportItem | null {
  const byId = new Map(parts.map((part) => [part.id, part]));
  const loss = (pool: (typeof result.pools)[number]) => (pool.baseLoss ?? 0) + (pool.shortageLoss ?? 0);
  for (const { poolId } of [...result.pools].sort((a, b) => loss(b) - loss(a))) {
    const part = byId.get(poolId);
    const last =
      part && partDates(part, asOf).find(({ kind }) => kind === "order-by" || kind === "last-order");
    if (!part || !last) continue;
    const by = last.on < asOf ? `overdue since ${day(last.on)}` : `by ${day(last.on)}`;
    return { text: `Decide how many ${part.datesOf} to buy, ${by}`, href: `/parts/${part.id}` };
  }
  return null;
}

function cost({ asOf }: ReportInput, line: ReportLine): ReportItem | null {
  if (line.cost !== null && !isUnapproved(line.cost, asOf)) return null;
  return { text: "Its cost of an hour's stop approved", href: `/lines/${line.code}` };
}
