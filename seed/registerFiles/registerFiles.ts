import type { RegisterKey } from "@/lib/intake/registers";
import { assetRegister } from "@/seed/registerFiles/assetRegister";
import { axisRegister } from "@/seed/registerFiles/axisRegister";
import { backupRegister, contactRegister, windowRegister } from "@/seed/registerFiles/cardRegisters";
import { eventRegister } from "@/seed/registerFiles/eventRegister";
import { GROUP_HABITS, HABITS, type Habits } from "@/seed/registerFiles/habits";
import { lifecycleRegister } from "@/seed/registerFiles/lifecycleRegister";
import type { RegisterRow } from "@/seed/registerFiles/registerRow";
import { type SiteView, viewSite } from "@/seed/registerFiles/siteView";
import { stockRegister } from "@/seed/registerFiles/stockRegister";
import { writeRegister } from "@/seed/registerFiles/writeRegister";
import type { HeldTables } from "@/seed/tables";

export interface RegisterFile {
  readonly register: RegisterKey;
  readonly name: string;
  readonly bytes: Uint8Array;
}

const SITE_REGISTERS: readonly (readonly [RegisterKey, (view: SiteView) => RegisterRow[]])[] = [
  ["assets", assetRegister],
  ["axes", axisRegister],
  ["stock", stockRegister],
  ["events", eventRegister],
  ["backups", backupRegister],
  ["contacts", contactRegister],
  ["windows", windowRegister],
];

const nameOf = (owner: string, register: RegisterKey, { format }: Habits): string =>
  `${owner}-${register}.${format === "workbook" ? "xlsx" : "csv"}`;

async function siteFiles(tables: HeldTables, code: string): Promise<RegisterFile[]> {
  const habits = HABITS[code];
  if (!habits) throw new RangeError(`code must be a site with known habits, got ${code}`);
  const view = viewSite(tables, code);
  return Promise.all(
    SITE_REGISTERS.map(async ([register, build]) => ({
      register,
      name: nameOf(code, register, habits),
      bytes: await writeRegister(register, build(view), habits),
    })),
  );
}

/** The files the sites keep, in the order they can be loaded into an empty installation. */
export async function registerFiles(tables: HeldTables): Promise<RegisterFile[]> {
  const lifecycle: RegisterFile = {
    register: "lifecycle",
    name: nameOf("group", "lifecycle", GROUP_HABITS),
    bytes: await writeRegister("lifecycle", lifecycleRegister(tables), GROUP_HABITS),
  };
  const files = await Promise.all(tables.Site.map(({ code }) => siteFiles(tables, code)));
  return [lifecycle, ...files.flat()];
}
