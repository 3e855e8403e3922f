import type { Values } from "@/lib/intake/checkRow";
import type { Catalogue } from "@/lib/intake/intents/catalogue";
import { given, type RowIntents, storedNumber } from "@/lib/intake/intents/cells";
import { type Intent, type Kept, keyOf } from "@/lib/intake/intents/intent";
import { meantPart } from "@/lib/intake/intents/partIntents";
import { profileFamilyProblems } from "@/lib/intake/intents/profileFamilyProblems";
import { numberValue, partValue, textValue } from "@/lib/intake/rowValues";
import type { IsoDate } from "@/lib/kernel/isoDate";

interface Context {
  readonly catalogue: Catalogue;
  readonly rowNumber: number;
  /** The day the file is loaded: what it says is known from then on. */
  readonly recordedOn: IsoDate;
}

const DATE_FIELDS = ["noticeOn", "lastOrderOn", "lastShipOn", "repairUntilOn", "orderByOn"] as const;

/** What a row of supply dates says: the family, the part with its price and lead time, and the sourced dates. */
export function lifecycleIntents(row: Values, context: Context): RowIntents {
  const { rowNumber } = context;
  const maker = textValue(row, "maker") ?? "";
  const family = textValue(row, "family");
  const familyKey = family === null ? null : keyOf(maker, family);
  const itemClass = textValue(row, "itemClass");
  const meant = meantPart(
    row,
    { partField: "partNumber", makerField: "maker", itemClass, description: textValue(row, "description") },
    context,
  );
  const familyOnly = meant.key === null && partValue(row, "partNumber") === null;
  const facts = familyOnly ? keyed("familyId", familyKey) : keyed("partId", meant.key);
  return {
    intents: [
      ...familyIntents(row, { maker, family, itemClass, familyOnly }, rowNumber),
      ...meant.intents,
      ...(meant.key === null ? [] : [partIntent(row, { key: meant.key, familyKey }, rowNumber)]),
      ...factIntents(row, facts, context),
      ...successorIntents(row, meant.key, context),
    ],
    problems: [...meant.problems, ...profileFamilyProblems(row, "profileFamily")],
  };
}

function keyed(field: "familyId" | "partId", key: string | null) {
  return key === null ? null : { field, key };
}

interface FamilyWords {
  readonly maker: string;
  readonly family: string | null;
  readonly itemClass: string | null;
  readonly familyOnly: boolean;
}

function familyIntents(
  row: Values,
  { maker, family, itemClass, familyOnly }: FamilyWords,
  rowNumber: number,
): Intent[] {
  if (family === null) return [];
  const described = familyOnly ? given({ description: textValue(row, "description") }) : {};
  const whenNew: Record<string, Kept> = { maker, name: family, itemClass: itemClass ?? "drive" };
  return [
    { entity: "Family", key: keyOf(maker, family), parents: {}, values: described, whenNew, rowNumber },
  ];
}

function partIntent(row: Values, { key, familyKey }: PartKeys, rowNumber: number): Intent {
  const price = storedNumber(row, "price", 2);
  const repaired = numberValue(row, "repairYield");
  const values = given({
    description: textValue(row, "description"),
    itemClass: textValue(row, "itemClass"),
    price,
    priceCurrency: price === null ? null : textValue(row, "currency"),
    pricedOn: textValue(row, "pricedOn"),
    leadWeeks: storedNumber(row, "leadWeeks", 1),
    leadWeeksP80: storedNumber(row, "leadWeeksP80", 1),
    repairYield: repaired === null ? null : Number((repaired / 100).toFixed(3)),
    repairTurnaroundDays: storedNumber(row, "repairTurnaroundDays"),
    powerKw: storedNumber(row, "powerKw", 3),
    profileFamily: storedNumber(row, "profileFamily"),
  });
  const parents: Intent["parents"] =
    familyKey === null ? {} : { familyId: { entity: "Family", key: familyKey } };
  return { entity: "Part", key, parents, values, whenNew: {}, rowNumber };
}

interface PartKeys {
  readonly key: string;
  readonly familyKey: string | null;
}

interface FactOwner {
  readonly field: "familyId" | "partId";
  readonly key: string;
}

function factIntents(row: Values, owner: FactOwner | null, { rowNumber, recordedOn }: Context): Intent[] {
  const source = textValue(row, "source");
  const checkedOn = textValue(row, "checkedOn");
  if (owner === null || source === null || checkedOn === null) return [];
  const entity = owner.field === "partId" ? ("Part" as const) : ("Family" as const);
  return [
    {
      entity: "LifecycleFact",
      key: keyOf(owner.field === "partId" ? "P" : "F", owner.key, source, checkedOn),
      parents: { [owner.field]: { entity, key: owner.key } },
      values: given(Object.fromEntries(DATE_FIELDS.map((field) => [field, textValue(row, field)]))),
      whenNew: { source, checkedOn, recordedOn: checkedOn < recordedOn ? checkedOn : recordedOn },
      rowNumber,
    },
  ];
}

function successorIntents(row: Values, partKey: string | null, context: Context): Intent[] {
  const written = partValue(row, "successor");
  if (written === null || partKey === null) return [];
  const found = context.catalogue.find(written, null);
  if (found.kind !== "known") return [];
  const successorKey = keyOf(found.maker, found.number);
  return [
    {
      entity: "Successor",
      key: keyOf(partKey, successorKey),
      parents: {
        partId: { entity: "Part", key: partKey },
        successorId: { entity: "Part", key: successorKey },
      },
      values: {},
      whenNew: {},
      rowNumber: context.rowNumber,
    },
  ];
}
