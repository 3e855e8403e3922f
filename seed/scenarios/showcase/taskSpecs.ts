/** A plan of a project: number, day, who, why; the first is the baseline. */
export interface ReplanSpec {
  readonly madeOn: string;
  readonly madeBy: string;
  readonly reason: string;
}

export interface TaskSpec {
  readonly project: string;
  /**
   * Code; name; working days; "w" needs a shutdown; after; not before; baseline; plan in force ("=" is the
   * baseline); actual; place of its milestone; who; crews; engineers. "-" is none.
   */
  readonly tasks: string;
  readonly replans: readonly ReplanSpec[];
}

export const TASKS: readonly TaskSpec[] = [
  {
    project: "KAR-02-R1",
    tasks: `
S1;Survey 42 axes and their controllers;20;-;-;-;2025-11-17/2025-12-12;=;2025-11-17/2025-12-19;1;Controls, Karlsvik;-;1
S2;Engineer both halves;45;-;S1;-;2025-12-15/2026-02-13;=;2026-01-05/2026-03-06;1;Integrator;-;0.5
O1;Order motors and drives;5;-;S2;-;2026-02-16/2026-02-20;=;2026-06-22/2026-06-26;-;Purchasing;-;-
P1;Build panels for three machines;60;-;S2;-;2026-02-16/2026-05-08;=;2026-03-09/2026-06-12;2;Panel shop;-;-
F1;Factory test with drives and motors;10;-;P1;2026-06-15;2026-06-15/2026-06-26;=;2026-06-29/2026-07-10;3;Integrator;-;0.5
W1;Cut over the first 22 axes;14;w;F1;2026-07-13;2026-07-13/2026-07-30;=;2026-07-13/2026-07-30;4;Integrator;2;1
V1;Accept the first 22 axes;20;-;W1;-;2026-07-31/2026-08-27;=;2026-08-03/-;-;Controls, Karlsvik;-;0.5
O2;Find motors and flanges for 11 unmatched axes;35;-;O1;2026-09-21;-;2026-09-21/2026-11-06;2026-09-21/2026-11-06;5;Integrator;-;0.5
O3;Wait for the motors of the second half;25;-;O2;-;2026-08-10/2026-10-30;2026-11-09/2026-12-11;2026-11-09/-;5;Purchasing;-;-
P2;Make flanges and adapter cables;10;-;O2;-;-;2026-11-09/2026-11-20;-;-;Panel shop;-;-
S3;Write down the 20 ring axes before removal;8;-;-;2026-11-16;2026-11-16/2026-11-25;=;2026-11-18/-;-;Controls, Karlsvik;-;1
C1;Write the second cutover, try the way back;5;-;P2,S3;-;2026-11-26/2026-12-02;=;-;-;Controls, Karlsvik;-;1
B9;Last trace and last copies;1;-;C1,O3;-;2026-12-14/2026-12-14;=;-;-;Controls, Karlsvik;-;1
W2;Take out, fit and wire the last 20 axes;4;w;B9;2026-12-23;2026-12-23/2026-12-28;=;-;6;Integrator;2;1
W3;Power up, tune and validate the last 20;4;w;W2;-;2026-12-29/2027-01-01;=;-;6;Integrator;2;1
A1;Make product, compare with before;5;-;W3;-;2027-01-04/2027-01-08;=;-;7;Production, Karlsvik;-;-
A2;Stand by, work off defects;20;-;A1,V1;-;2027-01-11/2027-02-05;=;-;7;Integrator;-;0.5
A3;Test and book the removed drives;10;-;W2;-;2026-12-29/2027-01-11;=;-;7;Store, Karlsvik;-;-
A4;Close;3;-;A2,A3;-;2027-02-08/2027-02-10;=;-;7;Controls, Karlsvik;-;0.5`,
    replans: [
      { madeOn: "2025-11-14", madeBy: "Engineer K", reason: "First plan" },
      {
        madeOn: "2026-09-21",
        madeBy: "Engineer K",
        reason: "11 motors unmatched, found after order: special flanges, delivery in December",
      },
    ],
  },
  {
    project: "VEL-09-R1",
    tasks: `
S1;Survey and engineering;60;-;-;2026-07-06;2026-07-06/2026-09-25;=;2026-07-06/2026-09-22;1;Controls, Velmark;-;1
O1;Order drives and motors;10;-;S1;2026-11-02;2026-11-02/2026-11-13;=;2026-11-02/2026-11-10;2;Purchasing;-;-
O2;Wait for drives and motors;100;-;O1;-;2026-11-16/2027-04-02;=;2026-11-11/-;-;Purchasing;-;-
P1;Draw circuits, build panels;70;-;S1;2027-01-04;2027-01-04/2027-04-09;=;-;3;Panel shop;-;-
B1;Convert the program, run it against a model;30;-;S1;2027-02-01;2027-02-01/2027-03-12;=;-;-;Integrator;-;0.5
F1;Bench run;5;-;P1,O2,B1;-;2027-04-12/2027-04-16;=;-;-;Integrator;-;0.5
C1;Write the cutover, try the way back;5;-;F1;-;2027-04-19/2027-04-23;=;-;-;Controls, Velmark;-;1
B9;Last trace and last copies;1;-;C1;2027-07-30;2027-07-30/2027-07-30;=;-;-;Controls, Velmark;-;1
W1;Lock out, take out, fit and wire;6;w;B9;2027-08-02;2027-08-02/2027-08-09;=;-;4;Integrator;2;1
W2;Power up and tune;4;w;W1;-;2027-08-10/2027-08-13;=;-;4;Integrator;1;1
W3;Validate every safety function with a second person;3;w;W2;-;2027-08-16/2027-08-18;=;-;4;Controls, Velmark;1;2
A1;Make product, compare with before;3;-;W3;-;2027-08-19/2027-08-23;=;-;5;Production, Velmark;-;-
A2;Stand by, work off defects;15;-;A1;-;2027-08-24/2027-09-13;=;-;5;Integrator;-;0.5
A3;Test and book the removed drives;10;-;W1;-;2027-08-10/2027-08-23;=;-;5;Store, Velmark;-;-
A4;Close;3;-;A2,A3;-;2027-09-14/2027-09-16;=;-;5;Controls, Velmark;-;0.5`,
    replans: [{ madeOn: "2026-06-01", madeBy: "Engineer V", reason: "First plan" }],
  },
  {
    project: "THO-01-S1",
    tasks: `
S1;List and check the safety parts;50;-;-;-;2026-09-07/2026-11-13;=;2026-09-07/2026-11-18;1;Controls, Thornby Vale;-;0.5
O1;Order the safety parts;3;-;S1;-;2026-11-16/2026-11-18;=;2026-11-23/2026-11-26;-;Purchasing;-;-
O2;Wait for the safety parts;80;-;O1;-;2026-11-19/2027-03-10;=;2026-11-27/-;2;Purchasing;-;-
E1;Write the validation plan with a competent person;15;-;S1;2027-02-01;2027-02-01/2027-02-19;=;-;-;Controls, Thornby Vale;-;0.5
C1;Write the shutdown day by day, with its lockout plan;3;-;E1,O2;-;2027-03-11/2027-03-15;=;-;-;Controls, Thornby Vale;-;0.5
W1;Fit the safety parts;5;w;C1;2027-07-26;2027-07-26/2027-07-30;=;-;3;Integrator;1;0.5
W2;Validate every safety function with a second person;4;w;W1;-;2027-08-02/2027-08-05;=;-;4;Controls, Thornby Vale;1;1
A1;Close;1;-;W2;-;2027-08-06/2027-08-06;=;-;4;Controls, Thornby Vale;-;0.5`,
    replans: [{ madeOn: "2026-09-01", madeBy: "Engineer T", reason: "First plan" }],
  },
];

export interface GateSpec {
  readonly project: string;
  readonly name: string;
  readonly guards: string;
  /** Day, name; null is open. */
  readonly passed: readonly [on: string, by: string] | null;
  /** Text; who; done on, or "-". */
  readonly items: string;
}

export const GATES: readonly GateSpec[] = [
  {
    project: "KAR-02-R1",
    name: "Go for the first half",
    guards: "W1",
    passed: ["2026-07-10", "Plant manager KAR"],
    items: `
Parts of 22 axes on site and looked over;Store, Karlsvik;2026-07-03
Programs compiled and run in the factory test;Integrator;2026-07-10
Values before removal written down for 22 axes;Controls, Karlsvik;2026-07-08
Way back tried on one machine;Integrator;2026-07-09
Days confirmed by production in writing;Production, Karlsvik;2026-06-30`,
  },
  {
    project: "KAR-02-R1",
    name: "Readiness of the second half",
    guards: "B9",
    passed: null,
    items: `
Motors of the second half on site, flanges tried;Purchasing;-
Programs compiled and run against a model;Integrator;2026-10-12
Values before removal written down for 20 axes;Controls, Karlsvik;-
Cutover written hour by hour, way back tried;Controls, Karlsvik;-
Production has confirmed the days of the shutdown in writing;Production, Karlsvik;-
Lockout plan and qualified persons named for every shift;Safety, Karlsvik;2026-11-24`,
  },
  {
    project: "KAR-02-R1",
    name: "Go or no-go, second half",
    guards: "W2",
    passed: null,
    items: `
Last trace taken, copies read back on another device;Controls, Karlsvik;-
Everything of the readiness gate still holds;Controls, Karlsvik;-
Production has handed the line over in writing;Production, Karlsvik;-
Energy isolated by the lockout plan, absence of voltage verified by a qualified person;Safety, Karlsvik;-`,
  },
  {
    project: "VEL-09-R1",
    name: "Readiness",
    guards: "B9",
    passed: null,
    items: `
Every part of the list is on site and looked over;Store, Velmark;-
Program compiled and run on the bench;Integrator;-
Cutover written hour by hour, way back tried;Controls, Velmark;-`,
  },
  {
    project: "THO-01-S1",
    name: "Go or no-go",
    guards: "W1",
    passed: null,
    items: `
Validation plan signed by a competent person;Safety, Thornby Vale;-
Lockout plan tried, qualified persons named;Safety, Thornby Vale;-`,
  },
];
