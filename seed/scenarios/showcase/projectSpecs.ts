import type { ProjectRow } from "@/seed/projectTables";

export interface ProjectSpec {
  readonly code: string;
  readonly line: string;
  readonly name: string;
  readonly status: ProjectRow["status"];
  readonly budget: string;
  readonly forecast: string | null;
  readonly startsOn: string;
  readonly endsOn: string;
  readonly cause: string | null;
  /** Name; percent of the budget it earns; due; done or "-"; the round, or all, whose axes earn it when powered. */
  readonly milestones: string;
  /** Units of the site's currency for one EUR by which the budget was made, and since when; null is kept in euros. */
  readonly budgetRate: { readonly perEuro: number; readonly on: string } | null;
  /** Kind; amount; day; text; number in the ledger; class; amount in its own currency; that currency. */
  readonly costs: string;
}

/** Karlsvik's retrofit runs over; the other two are on their way. Amounts in the site's currency. */
export const PROJECTS: readonly ProjectSpec[] = [
  {
    code: "KAR-02-R1",
    line: "KAR-02",
    name: "Board 2: Heron R to Heron E",
    status: "in_work",
    budget: "4900000.00",
    budgetRate: { perEuro: 11.45, on: "2025-01-01" },
    forecast: "6200000.00",
    startsOn: "2025-11-17",
    endsOn: "2027-02-26",
    cause: "11 motors unmatched, found after order",
    milestones: `
Survey and engineering;15;2026-02-27;2026-03-06
Panels built;15;2026-05-29;2026-06-12
Factory test passed;10;2026-06-26;2026-07-10
First 22 axes cut over;15;2026-07-30;2026-07-30;1
Motors of the second half delivered;15;2026-10-30;-
Last 20 axes cut over;20;2027-01-03;-;2
Line accepted, removed drives booked;10;2027-02-26;-`,
    costs: `
actual;620000.00;2026-03-13;Engineering and survey;L-26-0312;engineering
actual;740000.00;2026-06-19;Panels, three machines;L-26-0655;installation
actual;980000.00;2026-06-26;22 drives and motors, controllers;L-26-0690;drives
actual;180000.00;2026-07-17;Factory test;L-26-0758;installation
actual;560000.00;2026-08-14;Installation in July;L-26-0861;installation
actual;320000.00;2026-09-18;Program conversion;L-26-0977;engineering
actual;200000.00;2026-11-13;Motor survey and adapter designs not planned for;L-26-1190;engineering
committed;610000.00;2026-11-06;11 motors with flanges, special order;PO-26-2218;drives
committed;430000.00;2026-09-25;Installation crew, second half;PO-26-1871;installation`,
  },
  {
    code: "VEL-09-R1",
    line: "VEL-09",
    name: "Label: Heron R to Heron E",
    status: "in_work",
    budget: "310000.00",
    budgetRate: null,
    forecast: "305000.00",
    startsOn: "2026-06-01",
    endsOn: "2027-09-30",
    cause: null,
    milestones: `
Survey and engineering;20;2026-09-25;2026-09-22
Drives and motors ordered;20;2026-11-13;2026-11-10
Panels built;20;2027-04-30;-
Cut over in the August window;30;2027-08-20;-;all
Line accepted, removed drives booked;10;2027-09-30;-`,
    costs: `
actual;58200.00;2026-10-02;Engineering and survey;4711-220;engineering
actual;63300.00;2026-11-20;Drives, first part payment;4711-268;drives
committed;78400.00;2026-11-10;Drives and motors, rest of the order;B-26-0931;drives;885920.00;SEK`,
  },
  {
    code: "THO-01-S1",
    line: "THO-01",
    name: "Tea bag: safety parts before their mission time",
    status: "in_work",
    budget: "64000.00",
    budgetRate: { perEuro: 0.86, on: "2026-01-01" },
    forecast: "64000.00",
    startsOn: "2026-09-07",
    endsOn: "2027-08-08",
    cause: null,
    milestones: `
Safety parts listed and checked;25;2026-11-20;2026-11-18
Parts on site;25;2027-04-30;-
Fitted in the summer window;35;2027-08-01;-
Validated;15;2027-08-08;-`,
    costs: `
actual;15400.00;2026-11-24;Safety survey;J-10442;engineering
committed;18900.00;2026-11-26;Safety relays and light curtains;PO-7719;controllers`,
  },
];
