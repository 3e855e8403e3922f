import type { Values } from "@/lib/intake/checkRow";
import { axisFactValues } from "@/lib/intake/intents/axisFactValues";
import type { Catalogue } from "@/lib/intake/intents/catalogue";
import { given, type RowIntents, storedNumber } from "@/lib/intake/intents/cells";
import { driveDesignation, motorDesignation } from "@/lib/intake/intents/designations";
import { type Entity, type Intent, keyOf } from "@/lib/intake/intents/intent";
import { panelIntents } from "@/lib/intake/intents/panelIntents";
import { meantPart, type PartMention } from "@/lib/intake/intents/partIntents";
import { profileFamilyProblems } from "@/lib/intake/intents/profileFamilyProblems";
import { textValue } from "@/lib/intake/rowValues";

interface Context {
  readonly catalogue: Catalogue;
  readonly rowNumber: number;
  /** Site a line stands at, by line code; lines are loaded before their axes. */
  readonly siteOfLine: (lineCode: string) => string | null;
}

/** Names of the columns that tell what sits in one place. */
interface PlaceColumns extends PartMention {
  readonly serialField: string;
  readonly revisionField: string | null;
}

const driveColumns = { partField: "drivePart", makerField: "driveMaker", serialField: "driveSerial" };
const motorColumns = { partField: "motorPart", makerField: "motorMaker", serialField: "motorSerial" };
const itemColumns = { partField: "itemPart", makerField: "itemMaker", serialField: "itemSerial" };

/** What a row of the axis survey says: an axis with its drive and motor, or one other item of a machine. */
export function axisIntents(row: Values, context: Context): RowIntents {
  const axis = textValue(row, "axisCode");
  const described = { itemClass: textValue(row, "itemClass"), description: null, revisionField: null };
  if (axis === null) {
    const designation = textValue(row, "designation") ?? "";
    return placeIntents(
      row,
      { designation, ...{ axisKey: null, inPanel: true }, columns: { ...itemColumns, ...described } },
      context,
    );
  }
  const axisKey = keyOf(machineKey(row), axis);
  const drive = {
    designation: driveDesignation(axis),
    ...{ axisKey, inPanel: true },
    columns: { ...driveColumns, itemClass: "drive", description: null, revisionField: "driveRevision" },
  };
  const motor = {
    designation: motorDesignation(axis),
    // A motor sits at the machine; the panel of the row is its drive's.
    ...{ axisKey, inPanel: false },
    columns: { ...motorColumns, itemClass: "motor", description: null, revisionField: null },
  };
  const places = [drive, motor].map((place) => placeIntents(row, place, context));
  const own = [...networkIntents(row, context), axisIntent(row, axis, context)];
  return {
    intents: [...own, ...places.flatMap((place) => place.intents)],
    problems: [
      ...places.flatMap((place) => place.problems),
      ...profileFamilyProblems(row, "networkProfileFamily"),
    ],
  };
}

function machineKey(row: Values): string {
  return keyOf(textValue(row, "lineCode"), textValue(row, "machineCode"));
}

function networkIntents(row: Values, { siteOfLine, rowNumber }: Context): Intent[] {
  const name = textValue(row, "networkName");
  const site = siteOfLine(textValue(row, "lineCode") ?? "");
  if (name === null || site === null) return [];
  const values = given({
    kind: textValue(row, "networkKind"),
    profileFamily: storedNumber(row, "networkProfileFamily"),
  });
  const parents = { siteId: { entity: "Site" as const, key: site } };
  return [
    {
      entity: "Network",
      key: keyOf(site, name),
      parents,
      values,
      whenNew: { name, kind: "unknown" },
      rowNumber,
    },
  ];
}

function axisIntent(row: Values, code: string, { siteOfLine, rowNumber }: Context): Intent {
  const network = textValue(row, "networkName");
  const site = siteOfLine(textValue(row, "lineCode") ?? "");
  const parents = {
    machineId: { entity: "Machine" as const, key: machineKey(row) },
    ...(network === null || site === null
      ? {}
      : { networkId: { entity: "Network" as const, key: keyOf(site, network) } }),
  };
  const values = given({
    name: textValue(row, "axisName"),
    inServiceYear: storedNumber(row, "axisInServiceYear"),
    nodeAddress: storedNumber(row, "nodeAddress"),
    ringOrder: storedNumber(row, "ringOrder"),
    feedback: textValue(row, "feedback"),
    countsPerRev: storedNumber(row, "countsPerRev"),
    motorRevs: storedNumber(row, "motorRevs"),
    loadRevs: storedNumber(row, "loadRevs"),
    unitsPerLoadRev: storedNumber(row, "unitsPerLoadRev", 6),
    travelUnit: textValue(row, "travelUnit"),
    ...axisFactValues(row),
  });
  return { entity: "Axis", key: keyOf(machineKey(row), code), parents, values, whenNew: { code }, rowNumber };
}

interface Place {
  readonly designation: string;
  readonly axisKey: string | null;
  /** Whether it stands in the panel the row names. */
  readonly inPanel: boolean;
  readonly columns: PlaceColumns;
}

function placeIntents(
  row: Values,
  { designation, axisKey, inPanel, columns }: Place,
  context: Context,
): RowIntents {
  const { rowNumber } = context;
  const meant = meantPart(row, columns, context);
  const machine = machineKey(row);
  const key = keyOf(machine, designation);
  const [panel] = inPanel ? panelIntents(row, machine, rowNumber) : [];
  const position: Intent = {
    entity: "Position",
    key,
    parents: {
      machineId: { entity: "Machine", key: machine },
      ...parent("axisId", "Axis", axisKey),
      ...parent("partId", "Part", meant.key),
      ...parent("panelId", "Panel", panel?.key ?? null),
    },
    values: given({ itemClass: columns.itemClass }),
    whenNew: { designation },
    rowNumber,
  };
  const revision = (columns.revisionField && textValue(row, columns.revisionField)) || meant.revision;
  const serial = textValue(row, columns.serialField);
  const unit = unitIntents({ partKey: meant.key, serial, revision, positionKey: key }, rowNumber);
  return {
    intents: [...meant.intents, ...(panel ? [panel] : []), position, ...unit],
    problems: meant.problems,
  };
}

function parent(field: string, entity: Entity, key: string | null) {
  return key === null ? {} : { [field]: { entity, key } };
}

interface Sitting {
  readonly partKey: string | null;
  readonly serial: string | null;
  readonly revision: string | null;
  readonly positionKey: string;
}

function unitIntents({ partKey, serial, revision, positionKey }: Sitting, rowNumber: number): Intent[] {
  if (partKey === null || serial === null) return [];
  const unitKey = keyOf(partKey, serial);
  return [
    {
      entity: "Unit",
      key: unitKey,
      parents: { partId: { entity: "Part", key: partKey } },
      values: given({ revision }),
      whenNew: { serial },
      rowNumber,
    },
    {
      entity: "Placement",
      key: positionKey,
      parents: {
        unitId: { entity: "Unit", key: unitKey },
        positionId: { entity: "Position", key: positionKey },
      },
      values: {},
      whenNew: {},
      rowNumber,
    },
  ];
}
