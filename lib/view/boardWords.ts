import { money } from "@/lib/view/format";
import { quarterWords } from "@/lib/view/limitWords";
import { count, plainNumber } from "@/lib/view/number";
import { type BoardSlot, type BoardView, type BoardWay, missedDays, type Placed } from "@/lib/view/planBoard";
import { day, dayRange } from "@/lib/view/time";

/** A way's name short enough for a cell of the board. */
export function shortWay(optionId: string): string {
  const key = optionId.slice(optionId.indexOf(":") + 1);
  const part = /^(part|after-weekends)-(\d+)-of-(\d+)$/.exec(key);
  if (part) return part[1] === "part" ? `Part ${part[2]}/${part[3]}` : `Rest ${part[2]}/${part[3]}`;
  if (key.startsWith("duty-")) return "Duty";
  return { controller: "Controllers", full: "Whole line", weekends: "Weekends" }[key] ?? key;
}

/** What speaks against a place, in words; empty when nothing does. */
export function slotCautions({
  shortHours,
  earlyWeeks,
}: Pick<BoardSlot, "shortHours" | "earlyWeeks">): string[] {
  return [
    ...(shortHours > 0 ? [`${plainNumber(shortHours)} hours too short`] : []),
    ...(earlyWeeks > 0
      ? [`${plainNumber(Math.ceil(earlyWeeks))} weeks too early for parts and preparation`]
      : []),
  ];
}

/** Days of a place that have passed already, in words. */
export function missedWords(placed: Placed, asOf: string): string[] {
  const missed = missedDays(placed, asOf);
  return [
    ...(missed.order && placed.orderBy ? [`should have been ordered by ${day(placed.orderBy)}`] : []),
    ...(missed.start ? [`should have begun by ${day(placed.startBy)}`] : []),
  ];
}

/** A place in words: `Summer shutdown 2027, 2–20 Aug 2027` or `Q3 2027`. */
export function placeWords({
  name,
  startsOn,
  endsOn,
  id,
}: Pick<BoardSlot, "name" | "startsOn" | "endsOn" | "id">): string {
  if (id === `${id.slice(0, 4)}-Q${id.at(-1)}`) return `${quarterWords(id)}, over its weekends`;
  return `${name}, ${dayRange(startsOn, endsOn)}`;
}

/** A way in one sentence. */
export function wayWords({ cost, windowHours, engineerWeeks, released, after }: BoardWay): string {
  const parts = [
    `${money(cost.typical)} (${money(cost.low)} to ${money(cost.high)})`,
    windowHours > 0 ? `${plainNumber(windowHours)} hours in a shutdown` : "over weekends",
    `${plainNumber(engineerWeeks, 1)} engineer-weeks`,
    ...(released > 0 ? [`sets ${count(released, "drive")} free`] : []),
    ...(after.length > 0 ? [`after ${after.join(" or ")}`] : []),
  ];
  return `${parts.join(" · ")}.`;
}

/** Sum of what is planned with every cost at one end, EUR. */
export function spentSpan({ lines }: BoardView) {
  const sum = (end: "low" | "typical" | "high") =>
    lines.reduce((all, { placed }) => all + placed.reduce((own, { cost }) => own + cost[end], 0), 0);
  return { low: sum("low"), mean: sum("typical"), high: sum("high") };
}

/** What a plan is worth, in one sentence. */
export function boardLead({ worth, lines, horizonMonths }: BoardView): string {
  const planned = lines.filter(({ placed }) => placed.length > 0).length;
  if (planned === 0)
    return "Nothing is planned yet. Put ways into windows, fill by the ranking, or let the plan be solved.";
  const net = worth.worth - worth.spentDiscounted;
  return `${count(planned, "line")} for ${money(worth.spent)}: the group loses ${money(worth.worth)} less over ${plainNumber(horizonMonths / 12)} years, ${money(net)} after the money spent, all of the as-of day.`;
}
