import type { SiteCode } from "@/seed/scenarios/showcase/sites";

/** Families of drives, and UN for a drive nobody has identified. */
export type DriveFamily = "HR" | "OK" | "HE" | "EL" | "BI" | "LA" | "UN";

export const DRIVE_FAMILIES: readonly DriveFamily[] = ["HR", "OK", "HE", "EL", "BI", "LA", "UN"];

export type ControllerModel = "Slate 3" | "Slate 5" | "Slate 7";

export interface LineSpec {
  readonly code: string;
  readonly site: SiteCode;
  readonly name: string;
  readonly year: number;
  readonly machines: number;
  readonly axes: Readonly<Record<DriveFamily, number>>;
  readonly controller: ControllerModel;
  readonly firmware: number;
  readonly memory: number;
  /** EUR an hour at the budget rate. */
  readonly costPerHour: number;
  readonly bufferHours: number;
  readonly shifts: number;
}

// Line, name, year, machines | axes HR OK HE EL BI LA UN | controller, firmware, memory % | EUR/h, buffer h, shifts
const TABLE = `
VEL-01;Carton A;2009;7;50 0 0 0 0 2 0;Slate 5;22;71;2900;1;18
VEL-02;Carton B;2007;7;46 0 0 6 0 0 0;Slate 5;21;78;2400;1;18
VEL-03;Carton C;2002;7;6 48 0 0 0 0 0;Slate 3;16;93;3400;0.5;20
VEL-04;Flow wrap;2018;7;0 0 52 0 0 0 0;Slate 7;30;44;2100;2;18
VEL-05;Tissue fold;2003;6;0 40 0 0 8 0 0;Slate 3;18;81;1500;1.5;15
VEL-06;Tray pack;2010;6;28 0 14 0 0 0 0;Slate 5;24;69;1100;2;15
VEL-07;Sachet;1996;6;0 8 0 0 32 0 4;Slate 3;14;66;600;4;10
VEL-08;Case pack;2017;6;0 0 34 0 0 8 0;Slate 7;29;38;900;3;15
VEL-09;Label;2012;6;20 0 0 24 0 0 0;Slate 5;24;63;700;3;10
OST-01;Wrap 1;2010;7;44 0 0 0 0 4 0;Slate 5;23;70;1500;1;20
OST-02;Wrap 2;2009;7;36 0 0 12 0 0 0;Slate 5;23;74;1400;1;20
OST-03;Bagging;2004;6;8 36 0 0 0 0 0;Slate 3;17;84;1200;1;20
OST-04;Cup fill;2019;6;0 0 48 0 0 0 0;Slate 7;30;41;1300;1.5;18
OST-05;Cup seal;2018;6;0 0 0 46 0 0 0;Slate 7;30;47;1000;1.5;18
OST-06;Tube;1999;6;0 24 0 0 20 0 5;Slate 3;15;77;450;4;10
OST-07;Palletise;2016;6;0 0 42 0 0 0 0;Slate 7;28;35;800;2;20
OST-08;Bundle;2013;6;12 0 0 12 0 16 0;Slate 5;24;58;500;3;15
KAR-01;Board 1;2008;6;42 0 0 0 0 2 0;Slate 5;22;76;2600;0.5;20
KAR-02;Board 2;2008;6;20 0 22 0 0 0 0;Slate 7;30;52;2300;0.5;20
KAR-03;Die cut;2003;6;0 24 0 0 10 0 4;Slate 3;18;79;1700;1;15
KAR-04;Stack;2017;6;0 0 42 0 0 0 0;Slate 7;29;40;1400;1.5;18
KAR-05;Glue;2012;6;28 0 0 12 0 0 0;Slate 5;24;61;1200;1.5;18
KAR-06;Pack;2020;6;0 0 12 18 0 14 0;Slate 7;30;33;900;3;15
PIN-01;Diaper 1;2007;7;52 0 0 0 0 0 0;Slate 5;21;88;3800;0.25;21
PIN-02;Diaper 2;2011;7;40 0 0 10 0 0 0;Slate 5;24;72;3100;0.25;21
PIN-03;Wipes 1;2005;7;0 46 0 0 0 0 4;Slate 3;17;86;2700;0.5;21
PIN-04;Wipes 2;2018;7;0 0 50 0 0 0 0;Slate 7;30;45;2200;1;18
PIN-05;Roll pack;2010;6;28 0 0 0 0 17 0;Slate 5;23;67;1300;1.5;18
PIN-06;Sleeve;2001;6;0 24 0 0 20 0 6;Slate 3;16;73;800;2;15
PIN-07;Case;2017;6;0 0 40 0 0 4 0;Slate 7;29;36;1000;2;18
PIN-08;Pallet;2016;6;0 0 0 40 0 4 0;Slate 7;28;34;900;2;18
TAD-01;Snack 1;2002;6;0 42 0 0 0 0 0;Slate 3;15;82;1600;0.5;20
TAD-02;Snack 2;2006;6;38 0 0 0 0 4 0;Slate 5;20;75;1300;1;20
TAD-03;Sauce;1998;6;0 0 0 0 30 0 9;Slate 3;12;64;500;3;12
TAD-04;Pouch;2008;6;22 18 0 0 0 0 0;Slate 5;22;80;1100;1;18
TAD-05;Case;2015;6;0 0 20 10 0 6 6;Slate 7;27;39;600;3;12
THO-01;Tea bag;2007;6;40 0 0 0 0 0 0;Slate 5;24;68;1800;1;15
THO-02;Tea carton;2019;6;0 0 42 0 0 0 0;Slate 7;30;42;1200;1.5;15
THO-03;Overwrap;2020;6;0 0 0 41 0 0 0;Slate 7;30;37;800;2;15
THO-04;Case;2016;6;0 0 12 9 0 19 2;Slate 7;28;35;500;3;10
`;

function readLine(text: string): LineSpec {
  const [
    code = "",
    name = "",
    year,
    machines,
    axes = "",
    controller,
    firmware,
    memory,
    cost,
    buffer,
    shifts,
  ] = text.split(";");
  const counts = axes.split(" ").map(Number);
  return {
    code,
    site: code.slice(0, 3) as SiteCode,
    name,
    year: Number(year),
    machines: Number(machines),
    axes: Object.fromEntries(DRIVE_FAMILIES.map((family, i) => [family, counts[i] ?? 0])) as LineSpec["axes"],
    controller: controller as ControllerModel,
    firmware: Number(firmware),
    memory: Number(memory),
    costPerHour: Number(cost),
    bufferHours: Number(buffer),
    shifts: Number(shifts),
  };
}

/** The forty lines of the invented company. */
export const LINES: readonly LineSpec[] = TABLE.trim().split("\n").map(readLine);

/** What a person must know of a line, on its own page. */
export const LINE_NOTES: Readonly<Record<string, string>> = {
  "VEL-03": "Controller below the firmware floor and 93 % of its memory used: no new drive runs on it.",
  "VEL-06": "Both drive networks since the partial retrofit of 2019: two sets of spares.",
  "VEL-07": "Oldest line of the site.",
  "KAR-02": "Retrofit running, over budget.",
  "PIN-01": "Highest cost per hour of the group.",
  "PIN-03": "No source program for machine M04.",
  "PIN-06": "Risk accepted by the plant manager until 2027-06-30.",
  "TAD-01": "No usable spare on site; site data weak, and nobody has approved the cost per hour.",
  "THO-01": "Safety parts reach their mission time of 20 years in September 2027. Best documented line.",
};
