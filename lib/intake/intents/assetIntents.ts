import type { Values } from "@/lib/intake/checkRow";
import { given, storedNumber } from "@/lib/intake/intents/cells";
import { type Intent, keyOf } from "@/lib/intake/intents/intent";
import { panelIntents } from "@/lib/intake/intents/panelIntents";
import { firmwareValue, textValue } from "@/lib/intake/rowValues";
import type { IsoDate } from "@/lib/kernel/isoDate";

interface Context {
  readonly rowNumber: number;
  /** The day the file is loaded: a budget rate holds from then on. */
  readonly recordedOn: IsoDate;
}

/** What a row of the asset register says: its site and rate, its line, its machine and the controller of it. */
export function assetIntents(row: Values, { rowNumber, recordedOn }: Context): Intent[] {
  const site = textValue(row, "siteCode") ?? "";
  const line = textValue(row, "lineCode") ?? "";
  return [
    ...rateIntents(row, { rowNumber, recordedOn }),
    siteIntent(row, site, rowNumber),
    lineIntent(row, { site, line }, rowNumber),
    ...controllerIntents(row, site, rowNumber),
    ...machineIntents(row, { site, line }, rowNumber),
    ...panelIntents(row, keyOf(line, textValue(row, "machineCode")), rowNumber),
  ];
}

function rateIntents(row: Values, { rowNumber, recordedOn }: Context): Intent[] {
  const currency = textValue(row, "currency");
  const perEuro = storedNumber(row, "budgetRate", 6);
  if (currency === null || perEuro === null) return [];
  return [
    {
      entity: "CurrencyRate",
      key: currency,
      parents: {},
      values: { perEuro },
      whenNew: { currency, validFrom: recordedOn },
      rowNumber,
    },
  ];
}

function siteIntent(row: Values, code: string, rowNumber: number): Intent {
  const values = given({
    name: textValue(row, "siteName"),
    country: textValue(row, "country"),
    timeZone: textValue(row, "timeZone"),
    currency: textValue(row, "currency"),
  });
  return { entity: "Site", key: code, parents: {}, values, whenNew: { code }, rowNumber };
}

function lineIntent(row: Values, { site, line }: Place, rowNumber: number): Intent {
  const approvedOn = textValue(row, "costApprovedOn");
  const costPerHour = storedNumber(row, "costPerHour", 2);
  const values = given({
    name: textValue(row, "lineName"),
    shiftsPerWeek: storedNumber(row, "shiftsPerWeek"),
    inServiceYear: storedNumber(row, "lineInServiceYear"),
    costPerHour,
    costFixed: storedNumber(row, "costFixed", 2),
    costOwner: textValue(row, "costOwner"),
    costApprovedOn: approvedOn,
    costValidUntil: textValue(row, "costValidUntil"),
    costEvidence: costPerHour === null ? null : approvedOn === null ? "assumed" : "documented",
    bufferHours: storedNumber(row, "bufferHours", 2),
  });
  const parents = { siteId: { entity: "Site" as const, key: site } };
  return { entity: "Line", key: line, parents, values, whenNew: { code: line, name: line }, rowNumber };
}

interface Place {
  readonly site: string;
  readonly line: string;
}

function controllerIntents(row: Values, site: string, rowNumber: number): Intent[] {
  const designation = textValue(row, "controllerDesignation");
  if (designation === null) return [];
  const firmware = firmwareValue(row, "firmware");
  const values = given({
    model: textValue(row, "controllerModel"),
    firmware: firmware?.level ?? null,
    firmwareRaw: firmware?.raw ?? null,
    memoryPercent: storedNumber(row, "memoryPercent", 1),
    hardware: textValue(row, "controllerHardware"),
    axisLimit: storedNumber(row, "controllerAxisLimit"),
    readOn: textValue(row, "controllerReadOn"),
    evidence: textValue(row, "controllerReadOn") === null ? null : "measured",
  });
  const leads = textValue(row, "leadsLine");
  const parents = {
    siteId: { entity: "Site" as const, key: site },
    ...(leads === null ? {} : { leadsLineId: { entity: "Line" as const, key: leads } }),
  };
  const key = keyOf(site, designation);
  return [
    {
      entity: "Controller",
      key,
      parents,
      values,
      whenNew: { designation, model: "not recorded" },
      rowNumber,
    },
  ];
}

function machineIntents(row: Values, { site, line }: Place, rowNumber: number): Intent[] {
  const code = textValue(row, "machineCode");
  if (code === null) return [];
  const designation = textValue(row, "controllerDesignation");
  const values = given({
    name: textValue(row, "machineName"),
    inServiceYear: storedNumber(row, "machineInServiceYear"),
    retiredOn: textValue(row, "machineRetiredOn"),
  });
  const parents = {
    lineId: { entity: "Line" as const, key: line },
    ...(designation === null
      ? {}
      : { controllerId: { entity: "Controller" as const, key: keyOf(site, designation) } }),
  };
  return [
    { entity: "Machine", key: keyOf(line, code), parents, values, whenNew: { code, name: code }, rowNumber },
  ];
}
