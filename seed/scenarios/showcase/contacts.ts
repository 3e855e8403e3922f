import { LINES } from "@/seed/scenarios/showcase/lineTable";
import { lineId, SITES, type SiteCode, siteId } from "@/seed/scenarios/showcase/sites";
import { seedId } from "@/seed/seedId";
import type { ContactRow } from "@/seed/siteTables";

/**
 * Beginnings of numbers that are kept free for fiction; two digits are added. Germany: Bundesnetzagentur, notice
 * 148/2021, read through a news page. Sweden, Great Britain, North America: what their regulators publish, from memory.
 * No such range is known for Poland and Mexico, so those sites borrow one.
 */
const FICTION: Readonly<Record<SiteCode, string>> = {
  VEL: "+49 30 231250",
  OST: "+49 30 231251",
  KAR: "+46 8 46500 4",
  PIN: "+1 202 555 01",
  TAD: "+1 202 555 01",
  THO: "+44 1632 9600",
};

/** Two sites share one range; each has its own part of it. */
const FIRST: Partial<Record<SiteCode, number>> = { TAD: 50 };

const FUNCTIONS = [
  { role: "Electrician on call", hours: "day and night", note: null },
  { role: "Controls engineer on call", hours: "day and night, by phone", note: "has the programming laptop" },
  { role: "Storeroom", hours: "06:00 to 22:00; at night the gate has the key", note: null },
  {
    role: "Maintenance manager on duty",
    hours: "day and night",
    note: "decides on a transfer between sites",
  },
  { role: "Safety officer", hours: "weekdays 07:00 to 16:00", note: null },
] as const;

/** Functions to call at each site, and the shift lead of each line; no names of people. */
export function contactRows(): ContactRow[] {
  return SITES.flatMap(({ code }) => {
    let next = FIRST[code] ?? 0;
    const phone = () => {
      const digits = String(next++).padStart(2, "0");
      return `${FICTION[code]}${digits}`;
    };
    const ofSite = FUNCTIONS.map(({ role, hours, note }) => ({
      id: seedId("Contact", `${code}/${role}`),
      siteId: siteId(code),
      lineId: null,
      role,
      phone: phone(),
      hours,
      note,
    }));
    const ofLines = LINES.filter(({ site }) => site === code).map((line) => ({
      id: seedId("Contact", `${line.code}/shift lead`),
      siteId: siteId(code),
      lineId: lineId(line.code),
      role: `Shift lead ${line.code}`,
      phone: phone(),
      hours: "while the line runs",
      note: null,
    }));
    return [...ofSite, ...ofLines];
  });
}
