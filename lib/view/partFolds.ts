import { count, plainNumber, quantity } from "@/lib/view/number";
import type { PartDossier } from "@/lib/view/partDossier";
import type { PartExperience } from "@/lib/view/partExperience";

/** What the folded parts of a part's page say while they are closed; sums are of the reader's sites. */
export const partFolds = {
  identity: ({ maker, family, successors }: Pick<PartDossier, "maker" | "family" | "successors">): string => {
    const next = successors.map(({ number }) => number).join(", ");
    return `${maker}, ${family === null ? "no family" : family.name}; ${next === "" ? "no successor recorded" : `replaced by ${next}`}`;
  },

  book: ({ stock, elsewhere }: Pick<PartDossier, "stock" | "elsewhere">): string => {
    if (stock.length === 0) return elsewhere === null ? "no stock recorded" : "no stock at your sites";
    const usable = stock.reduce((sum, site) => sum + site.usable, 0);
    const counted = stock.flatMap(({ book }) => (book === null ? [] : [book]));
    const book = counted.reduce((sum, pieces) => sum + pieces, 0);
    const gap = counted.length < stock.length ? ", some not counted" : "";
    return `${quantity(usable)} usable of ${plainNumber(book)} on the books${gap}${atYours(elsewhere)}`;
  },

  repairs: ({ repairs, elsewhere }: Pick<PartDossier, "repairs" | "elsewhere">): string => {
    const late = repairs.filter(({ daysOverdue }) => (daysOverdue ?? 0) > 0).length;
    return `${plainNumber(repairs.length)} out, ${plainNumber(late)} overdue${atYours(elsewhere)}`;
  },

  stops: ({ events, elsewhere }: Pick<PartExperience, "events" | "elsewhere">): string => {
    const stops = events.filter(({ downtimeHours, setAside }) => downtimeHours !== null && setAside === null);
    return `${count(stops.length, "stop with its hours", "stops with their hours")}${atYours(elsewhere)}`;
  },

  events: ({ events, elsewhere }: Pick<PartExperience, "events" | "elsewhere">): string =>
    `${count(events.length, "event")}${atYours(elsewhere)}`,
} as const;

const atYours = (elsewhere: object | null) => (elsewhere === null ? "" : ", at your sites");
