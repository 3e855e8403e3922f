import { SIZES } from "@/seed/scenarios/showcase/driveSizes";
import { PARTS, partId, partSpec } from "@/seed/scenarios/showcase/parts";
import { siteId } from "@/seed/scenarios/showcase/sites";
import { seedId } from "@/seed/seedId";
import type { PartAliasRow, SuccessorRow } from "@/seed/tables";

/** What the compatibility rules judge is not said again here: it would stay as it is when a rule changes. */
const RING_TO_ETHERNET = "Controller, memory and ring: rules R1, R2, R3 and R7.";

const CONDITIONS: Readonly<Record<string, string>> = {
  "HR>HE": `${RING_TO_ETHERNET} Wren motors: rule R5.`,
  "OK>EL": RING_TO_ETHERNET,
  "OK>HE": `${RING_TO_ETHERNET} Wren motors: rule R5.`,
  "BI>LA": "The controller needs a pulse output for each axis.",
  "WR>FI": "Only together with a drive that reads digital feedback; compare flange, shaft and torque.",
  "RO>FI": "Only together with a drive that reads digital feedback.",
};

const SINGLE = [
  ["S3-300", "S7-700", "New bus and new I/O reach; the program must be converted."],
  ["S5-500", "S7-700", "No fibre ring: every ring drive of the controller goes with it."],
  ["PB-16", "PN-16", "Controller with Ethernet I/O; wiring of the rack is new."],
  ["L8-08", "LX-12", "Screens must be converted; the cut-out is 40 mm wider."],
  ["LR-01", "PN-16", "Which cards a firmware level still runs: rule R4."],
] as const;

function sized(from: string, to: string): [string, string, string][] {
  const condition = CONDITIONS[`${from}>${to}`] ?? "";
  return SIZES.map((size) => [`${from}-${size}`, `${to}-${size}`, condition]);
}

/** Which part may stand in for which, and what must hold; the 6 kW Wren has none. */
export function successorRows(): SuccessorRow[] {
  const pairs = [
    ...["HE"].flatMap((to) => sized("HR", to)),
    ...["EL", "HE"].flatMap((to) => sized("OK", to)),
    ...sized("BI", "LA"),
    ...sized("WR", "FI"),
    ...sized("RO", "FI"),
    ...SINGLE,
  ];
  return pairs.map(([from, to, condition]) => ({
    id: seedId("Successor", `${from}>${to}`),
    partId: partId(from),
    successorId: partId(to),
    condition,
  }));
}

/** Spellings people use for a drive, and the storerooms' own numbers, which begin with the site's digit. */
const STOREROOMS = ["VEL", "OST", "KAR", "PIN", "TAD", "THO"];

export function storeroomNumber(site: string, key: string): string {
  const place = PARTS.indexOf(partSpec(key)) + 1;
  return `${STOREROOMS.indexOf(site) + 1}0${String(45_800 + 7 * place).padStart(6, "0")}`;
}

/** @param stocked Site and part of each shelf, as `OST/HR-010`. */
export function aliasRows(stocked: ReadonlySet<string>): PartAliasRow[] {
  const spellings = PARTS.filter(({ family }) => family.itemClass === "drive").map((part) => ({
    id: seedId("PartAlias", part.key),
    partId: partId(part.key),
    siteId: null,
    alias: `${part.family.name} ${part.key.slice(3)}`,
  }));
  const numbers = [...stocked].map((shelf) => {
    const [site = "", key = ""] = shelf.split("/");
    return {
      id: seedId("PartAlias", shelf),
      partId: partId(key),
      siteId: siteId(site),
      alias: storeroomNumber(site, key),
    };
  });
  return [...spellings, ...numbers];
}
