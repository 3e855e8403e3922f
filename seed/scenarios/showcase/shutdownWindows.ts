import { siteId } from "@/seed/scenarios/showcase/sites";
import { seedId } from "@/seed/seedId";
import type { ShutdownWindowRow } from "@/seed/siteTables";

/** Hours of one usable day in the windows below. */
const DAY = 10;

/** Site; name; first day; last day; usable days, or empty where nobody has said. */
const TABLE = `
VEL;Summer shutdown 2027;2027-08-02;2027-08-20;14
OST;Summer shutdown 2027;2027-06-28;2027-07-11;10
KAR;Summer shutdown 2027;2027-07-05;2027-07-30;18
PIN;July shutdown 2027;2027-07-01;2027-07-06;4
PIN;Year-end shutdown 2027;2027-12-23;2028-01-02;7
TAD;Easter week 2027;2027-03-22;2027-03-28;5
TAD;Year-end shutdown 2027;2027-12-20;2028-01-03;
THO;Summer shutdown 2027;2027-07-26;2027-08-08;10
VEL;Summer shutdown 2028;2028-07-31;2028-08-18;14
OST;Summer shutdown 2028;2028-06-26;2028-07-09;10
KAR;Summer shutdown 2028;2028-07-03;2028-07-28;18
PIN;July shutdown 2028;2028-06-30;2028-07-05;4
PIN;Year-end shutdown 2028;2028-12-22;2029-01-01;7
TAD;Easter week 2028;2028-04-10;2028-04-16;5
THO;Summer shutdown 2028;2028-07-24;2028-08-06;10
VEL;Summer shutdown 2029;2029-07-30;2029-08-17;14
OST;Summer shutdown 2029;2029-06-25;2029-07-08;10
KAR;Summer shutdown 2029;2029-07-02;2029-07-27;18
PIN;July shutdown 2029;2029-06-29;2029-07-04;4
TAD;Easter week 2029;2029-03-26;2029-04-01;5
THO;Summer shutdown 2029;2029-07-23;2029-08-05;10
`;

/** The days on which each invented site stands still. */
export function shutdownWindowRows(): ShutdownWindowRow[] {
  return TABLE.trim()
    .split("\n")
    .map((text) => {
      const [site = "", name = "", startsOn = "", endsOn = "", days = ""] = text.split(";");
      return {
        id: seedId("ShutdownWindow", `${site}/${startsOn}`),
        siteId: siteId(site),
        lineId: null,
        ...{ name, startsOn, endsOn },
        usableHours: days === "" ? null : Number(days) * DAY,
        note: days === "" ? "Usable days not settled with production" : `${days} usable days of ${DAY} hours`,
      };
    });
}
