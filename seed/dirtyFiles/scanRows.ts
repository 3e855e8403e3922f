import { dayNumber } from "@/seed/dirtyFiles/dayNumber";
import type { Spoil } from "@/seed/dirtyFiles/spoil";
import { axisRegister } from "@/seed/registerFiles/axisRegister";
import type { RegisterRow } from "@/seed/registerFiles/registerRow";
import type { SiteView } from "@/seed/registerFiles/siteView";

const SEEN_ON = "2026-11-12";

/** Headers of the program that listened at the switch; the same at every site. */
export const SCAN_HEADERS: Readonly<Record<string, string>> = {
  siteCode: "Plant",
  lineCode: "Line",
  machineCode: "Machine",
  networkName: "Segment",
  address: "Node address",
  deviceName: "Product name",
  maker: "Vendor",
  partNumber: "Catalogue no.",
  firmware: "Rev major.minor",
  serial: "S/N",
  seenOn: "Scan time",
};

/** What a network of the site answered: drives by their node, at the end one nobody registered. */
export function scanRows(view: SiteView): RegisterRow[] {
  const drives = axisRegister(view).filter(
    ({ nodeAddress, driveSerial }) => nodeAddress !== null && driveSerial,
  );
  const seen = drives.slice(0, 14).map(
    (row, index): RegisterRow => ({
      siteCode: view.site.code,
      lineCode: row.lineCode ?? null,
      machineCode: row.machineCode ?? null,
      networkName: row.networkName ?? null,
      address: String(row.nodeAddress),
      deviceName: "Servo drive",
      maker: row.driveMaker ?? null,
      partNumber: String(row.drivePart).replace(/-[A-Z]\d$/, ""),
      firmware: String(20 + (index % 5)),
      serial: row.driveSerial ?? null,
      seenOn: `${SEEN_ON}T${String(6 + index).padStart(2, "0")}:20`,
    }),
  );
  const [last] = seen.slice(-1);
  const ghost = last && { ...last, address: "99", serial: "GH-000099", seenOn: `${SEEN_ON}T23:40` };
  return ghost ? [...seen, ghost] : seen;
}

/** What spoils a network list: spellings, firmware, stand-ins, times. */
export const SCAN_SPOILS: readonly Spoil[] = [
  { row: 0, field: "partNumber", problem: 1, write: (number) => number.toLowerCase().replaceAll("-", "_") },
  { row: 1, field: "firmware", problem: 15, write: (level) => `v${level}` },
  { row: 2, field: "firmware", problem: 15, write: () => "20.011", means: "20.011" },
  { row: 3, field: "firmware", problem: 15, write: () => "20.11", means: "20.11" },
  { row: 4, field: "firmware", problem: 15, write: () => "latest", means: null },
  { row: 5, field: "serial", problem: 20, write: () => "XXX", means: null },
  {
    ...{ row: 6, field: "partNumber", problem: 2, write: (number: string) => `${number} REV. B` },
    means: (number) => `${number} rev. B`,
  },
  {
    row: 7,
    field: "partNumber",
    problem: 1,
    write: (number) => number.replace("0", "O"),
    means: (number) => ({ looksLike: number }),
  },
  {
    ...{ row: 8, field: "seenOn", problem: 6 },
    write: (at) => (dayNumber(at.slice(0, 10)) + Number(at.slice(11, 13)) / 24 + 20 / 1440).toFixed(6),
  },
  { row: 9, field: "firmware", problem: 20, write: () => "?", means: null },
  { row: 10, field: "seenOn", problem: 6, write: (at) => at.replace("T", " ") },
  { row: 14, field: "address", problem: 23, write: (address) => address },
];
