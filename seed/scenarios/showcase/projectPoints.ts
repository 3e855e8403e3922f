import type { OpenPointRow, ProjectRiskRow } from "@/seed/closeTables";
import { projectId } from "@/seed/scenarios/showcase/projects";
import { seedId } from "@/seed/seedId";

// Project; what; owner; raised; due or "-"; blocks or "-"; done or "-".
const POINTS = `
KAR-02-R1;Guard of M1 stands too close for the longer stop: move it or shorten the stop;Machine-safety engineer;2026-08-24;2026-10-15;blocks;-
KAR-02-R1;Test and book the eight Heron R in the box behind the workshop;Storeroom;2026-09-14;2026-11-06;blocks;-
KAR-02-R1;Second name on the safety check of one axis;Controls engineer;2026-09-11;2026-12-04;blocks;-
KAR-02-R1;Flanges of the 11 special motors: drawings released by the maker;Project lead;2026-10-05;2026-12-11;blocks;-
KAR-02-R1;Night shift trained on the new fault messages;Maintenance manager;2026-08-10;2026-12-18;-;-
KAR-02-R1;Minimum of Heron R at Karlsvik lowered once the last axis is over;Spares planner;2026-08-10;2027-02-26;-;-
KAR-02-R1;Copies of the July programs on the site's share;Controls engineer;2026-07-20;2026-08-14;blocks;2026-08-12
VEL-09-R1;Panel builder confirms the delivery week;Project lead;2026-11-12;2026-12-15;-;-
`;

// Project; what; chance low, high (percent) or "-"; effect low, high or "-"; action; owner; state.
const RISKS = `
KAR-02-R1;Special motors later than the window of the second half;25 45;380000 900000;Ask the maker for a part delivery, keep the ring drives until then;Project lead;open
KAR-02-R1;Window of the second half is shortened by production;20 40;120000 260000;Two crews on one machine, decided by 11 December;Plant manager;open
KAR-02-R1;Stopping distance of lifting axes longer with the new drives;10 30;60000 200000;Measure three axes before the window;Machine-safety engineer;open
KAR-02-R1;Old ring fails while half of it is gone;5 15;90000 240000;Spare converter and fibre on the spot;Controls engineer;open
KAR-02-R1;Cabinet of M4 too warm in summer;-;-;Log temperatures from May on;Electrical workshop;open
KAR-02-R1;Motors do not match the new drives;-;-;Survey of all motors before the next order;Project lead;happened
VEL-09-R1;Memory of the controller does not suffice after the upgrade;10 20;15000 40000;Try on the bench before the window;Controls engineer;open
`;

const rowsOf = (text: string): string[][] =>
  text
    .trim()
    .split("\n")
    .map((line) => line.split(";"));
const orNull = (text: string): string | null => (text === "-" ? null : text);

export function openPointRows(): OpenPointRow[] {
  return rowsOf(POINTS).map(
    ([code = "", what = "", owner = "", raisedOn = "", due = "-", mark, done = "-"]) => ({
      ...{ id: seedId("OpenPoint", `${code}/${what}`), projectId: projectId(code) },
      ...{ what, owner, raisedOn, dueOn: orNull(due), blocks: mark === "blocks", doneOn: orNull(done) },
      doneBy: done === "-" ? null : owner,
    }),
  );
}

export function projectRiskRows(): ProjectRiskRow[] {
  return rowsOf(RISKS).map(
    ([code = "", what = "", chance = "-", effect = "-", action = "", owner = "", state]) => {
      const [chanceLow, chanceHigh] = ends(chance);
      const [effectLow, effectHigh] = ends(effect);
      return {
        ...{ id: seedId("ProjectRisk", `${code}/${what}`), projectId: projectId(code), what },
        chanceLow: chanceLow === null ? null : Number(chanceLow) / 100,
        chanceHigh: chanceHigh === null ? null : Number(chanceHigh) / 100,
        ...{ effectLow, effectHigh, action, owner, state: state === "happened" ? "happened" : "open" },
      };
    },
  );
}

function ends(text: string): readonly [string, string] | readonly [null, null] {
  if (text === "-") return [null, null];
  const [low = "", high = ""] = text.split(" ");
  return [low, high];
}
