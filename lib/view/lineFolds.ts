import { money } from "@/lib/view/format";
import type { LineDossier } from "@/lib/view/lineDossier";
import { placeRange } from "@/lib/view/linePlace";
import { count, NBSP, significant } from "@/lib/view/number";
import { blockerCounts, standingWord } from "@/lib/view/standing";
import { stopCostTable } from "@/lib/view/stopCostTable";
import { day } from "@/lib/view/time";

/** Length of the stop whose cost stands for the table: one shift. */
const SHIFT_HOURS = 8;

/** What each folded part of a line's dossier says while it is closed. */
export type LineFolds = Readonly<
  Record<"place" | "binding" | "stopCost" | "downtime" | "blockers" | "machines" | "events" | "links", string>
>;

/** The key figure of every folded part of the dossier. */
export function lineFolds(line: LineDossier): LineFolds {
  const { machines, projects, plans, result } = line;
  const axes = machines.reduce((sum, machine) => sum + machine.axes.length, 0);
  return {
    place: placeWords(line),
    binding: bindingWords(line),
    stopCost: stopCostWords(line),
    downtime: `${significant(result.stopsPerYear, 2)} stops expected a year`,
    blockers: blockerWords(line),
    machines: `${count(machines.length, "machine")}, ${count(axes, "axis", "axes")}`,
    events: eventWords(line),
    links: `${count(projects.length, "project")}, ${count(plans.length, "plan")}`,
  };
}

function placeWords({ place, rankByLoss, groupLines }: LineDossier): string {
  if (place === null || rankByLoss === null) return "no place by money";
  const { low, high } = place.span;
  const range = `${low === high ? "place" : "places"} ${placeRange(place.span)}`;
  return `${range} of ${groupLines} in nine of ten draws${place.fragile ? ", fragile" : ""}`;
}

/** The next date not yet done; a date behind us stands first. */
function bindingWords({ obligations }: LineDossier): string {
  const next = obligations.find(({ doneOn }) => doneOn === null);
  return next ? `next ${day(next.dueOn)}: ${next.title}` : "none open on record";
}

function stopCostWords(line: LineDossier): string {
  const shift = stopCostTable(line)?.find(({ hours }) => hours === SHIFT_HOURS);
  return shift ? `a stop of ${SHIFT_HOURS}${NBSP}h costs ${money(shift.total)}` : "no cost per hour";
}

function blockerWords({ compatibility: { standing, controllers } }: LineDossier): string {
  const [first] = blockerCounts(controllers);
  return first ? `${standingWord(standing)}; ${first.blocker}: ${first.words}` : standingWord(standing);
}

function eventWords({ events }: LineDossier): string {
  const aside = events.filter(({ setAside }) => setAside !== null).length;
  return `${count(events.length, "event")}${aside === 0 ? "" : `, ${aside} set aside`}`;
}
