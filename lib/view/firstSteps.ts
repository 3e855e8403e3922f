import type { RegisterKey } from "@/lib/intake/registers";

/** What an installation holds that the first steps ask about, at the sites of whoever asks. */
export interface FirstHoldings {
  /** Accounts with a role; null where the reader may not know. */
  readonly people: number | null;
  readonly parts: number;
  readonly lines: number;
  readonly axes: number;
  readonly lots: number;
  readonly events: number;
  /** Lines with a cost of a stop. */
  readonly costed: number;
}

/** One thing to do before the ranking means something. */
export interface FirstStep {
  readonly key: string;
  readonly title: string;
  readonly why: string;
  readonly href: string;
  readonly doneWhen: string;
  readonly isDone: boolean;
  /** The register whose file does it. */
  readonly register?: RegisterKey;
}

/** Files of the demonstration company that are offered to try the steps with, with what each holds. */
export const EXAMPLE_FILES = {
  "group-lifecycle.csv": "supply dates of the whole company",
  "VEL-assets.csv": "lines, machines and controllers of one site",
  "VEL-axes.csv": "axes of that site",
  "VEL-stock.csv": "its stock",
  "VEL-events.csv": "its events",
} as const;

export const isExampleFile = (name: string): name is keyof typeof EXAMPLE_FILES =>
  Object.hasOwn(EXAMPLE_FILES, name);

/** The steps in their order, each with whether it is done. */
export function firstSteps(has: FirstHoldings): FirstStep[] {
  const load = (step: Omit<FirstStep, "href">): FirstStep => ({ ...step, href: "/import" });
  return [
    ...(has.people === null ? [] : [peopleStep(has.people)]),
    load({
      ...{ key: "dates", title: "Load the supply dates", register: "lifecycle" },
      why: "They make the parts known, with the days until which each can be bought and repaired.",
      ...{ doneWhen: "Done when a part is on record.", isDone: has.parts > 0 },
    }),
    load({
      ...{ key: "assets", title: "Load the assets of a site", register: "assets" },
      why: "They make the site, its lines, machines and controllers. One site is enough to begin with.",
      ...{ doneWhen: "Done when a line is on record.", isDone: has.lines > 0 },
    }),
    load({
      ...{ key: "axes", title: "Load its axis survey", register: "axes" },
      why: "It says which drive, motor and network stands at which machine.",
      ...{ doneWhen: "Done when an axis is on record.", isDone: has.axes > 0 },
    }),
    load({
      ...{ key: "stock", title: "Load its stock", register: "stock" },
      why: "It says what lies on which shelf. Without it every spare is not known, and so is the shortage.",
      ...{ doneWhen: "Done when a bin is on record.", isDone: has.lots > 0 },
    }),
    load({
      ...{ key: "events", title: "Load its events", register: "events" },
      why: "They say what failed and for how long. Without them all rates rest on assumptions.",
      ...{ doneWhen: "Done when an event is on record.", isDone: has.events > 0 },
    }),
    {
      ...{ key: "cost", title: "Say what a stop costs", href: "/lines" },
      why: "Open a line and edit its figures. Without a cost per hour a line has a score but no loss in money.",
      ...{ doneWhen: "Done when one line has a cost.", isDone: has.costed > 0 },
    },
  ];
}

function peopleStep(people: number): FirstStep {
  return {
    ...{ key: "people", title: "Give people a role", href: "/people" },
    why: "Each person sees the sites of their roles. Amounts of money are a right of their own.",
    ...{ doneWhen: "Done when a second person has a role.", isDone: people > 1 },
  };
}

/** Whether the records can carry a ranking: what people and costs add may follow. */
export function canRank({ parts, lines, axes }: FirstHoldings): boolean {
  return parts > 0 && lines > 0 && axes > 0;
}

/** The cookie by which somebody puts the first steps away on a device. */
export const PUT_AWAY = "ebbline-first-steps";
