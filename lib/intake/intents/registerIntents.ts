import { assetIntents } from "@/lib/intake/intents/assetIntents";
import { axisIntents } from "@/lib/intake/intents/axisIntents";
import { backupIntents, contactIntents, windowIntents } from "@/lib/intake/intents/cardIntents";
import type { Catalogue } from "@/lib/intake/intents/catalogue";
import type { RowIntents } from "@/lib/intake/intents/cells";
import { eventIntents } from "@/lib/intake/intents/eventIntents";
import { lifecycleIntents } from "@/lib/intake/intents/lifecycleIntents";
import { scanIntents } from "@/lib/intake/intents/scanIntents";
import { stockIntents } from "@/lib/intake/intents/stockIntents";
import type { ReadRow } from "@/lib/intake/readRegister";
import type { RegisterKey } from "@/lib/intake/registers";
import type { IsoDate } from "@/lib/kernel/isoDate";

/** What has to be known beside the file to understand it. */
export interface Surroundings {
  readonly catalogue: Catalogue;
  /** Site a line stands at, by line code; null when the line is not known. */
  readonly siteOfLine: (lineCode: string) => string | null;
  readonly recordedOn: IsoDate;
  /** IANA zone of a site, by its code; null when the site is not known. */
  readonly zoneOfSite: (siteCode: string) => string | null;
}

/** What one row of a register says about stored things, and what stands against taking it over. */
export function registerIntents(register: RegisterKey, row: ReadRow, around: Surroundings): RowIntents {
  const context = { ...around, rowNumber: row.rowNumber };
  switch (register) {
    case "assets":
      return { intents: assetIntents(row.values, context), problems: [] };
    case "axes":
      return axisIntents(row.values, context);
    case "stock":
      return stockIntents(row.values, context);
    case "events":
      return eventIntents(row.values, context);
    case "lifecycle":
      return lifecycleIntents(row.values, context);
    case "backups":
      return backupIntents(row.values, context);
    case "contacts":
      return contactIntents(row.values, context);
    case "windows":
      return windowIntents(row.values, context);
    case "scans":
      return scanIntents(row.values, context);
  }
}
