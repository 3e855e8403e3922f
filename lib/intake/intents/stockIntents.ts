import type { Values } from "@/lib/intake/checkRow";
import type { Catalogue } from "@/lib/intake/intents/catalogue";
import { given, type RowIntents, type RowProblem, storedNumber } from "@/lib/intake/intents/cells";
import { type Intent, keyOf } from "@/lib/intake/intents/intent";
import { meantPart } from "@/lib/intake/intents/partIntents";
import { textValue } from "@/lib/intake/rowValues";

interface Context {
  readonly catalogue: Catalogue;
  readonly rowNumber: number;
}

/** What a row of the stock register says: pieces of one part in one bin in one state, and the site's own number. */
export function stockIntents(row: Values, context: Context): RowIntents {
  const meant = meantPart(
    row,
    {
      partField: "partNumber",
      makerField: "maker",
      itemClass: textValue(row, "itemClass"),
      description: textValue(row, "description"),
    },
    context,
  );
  if (meant.key === null)
    return { intents: [], problems: meant.problems.length > 0 ? meant.problems : [unknownNumber(row)] };
  const lot = lotIntent(row, { partKey: meant.key, revision: meant.revision }, context.rowNumber);
  const alias = aliasIntents(row, meant.key, context.rowNumber);
  return { intents: [...meant.intents, ...alias, lot], problems: [] };
}

function unknownNumber(row: Values): RowProblem {
  const number = textValue(row, "storeroomNumber") ?? "";
  return {
    field: "storeroomNumber",
    problem: `The storeroom's number ${number} is not known yet, and the row does not give the maker's number`,
    remedy: "Say under Parts, numbers to settle, which part it is, or fill the maker's number",
  };
}

interface LotPart {
  readonly partKey: string;
  readonly revision: string | null;
}

function lotIntent(row: Values, { partKey, revision: split }: LotPart, rowNumber: number): Intent {
  const site = textValue(row, "siteCode") ?? "";
  const bin = textValue(row, "bin") ?? "";
  const revision = textValue(row, "revision") ?? split ?? "";
  // A shelf whose pieces nobody has judged holds pieces that may not work.
  const state = textValue(row, "state") ?? "unproven";
  return {
    entity: "StockLot",
    key: keyOf(site, partKey, bin, revision, state),
    parents: { siteId: { entity: "Site", key: site }, partId: { entity: "Part", key: partKey } },
    values: given({
      quantity: storedNumber(row, "quantity"),
      lastPoweredOn: textValue(row, "lastPoweredOn"),
      countedOn: textValue(row, "countedOn"),
      reservedFor: textValue(row, "reservedFor"),
      note: textValue(row, "note"),
    }),
    whenNew: { bin, revision, state },
    adds: ["quantity"],
    rowNumber,
  };
}

function aliasIntents(row: Values, partKey: string, rowNumber: number): Intent[] {
  const alias = textValue(row, "storeroomNumber");
  if (alias === null) return [];
  const site = textValue(row, "siteCode") ?? "";
  return [
    {
      entity: "PartAlias",
      key: keyOf(site, alias),
      parents: { partId: { entity: "Part", key: partKey }, siteId: { entity: "Site", key: site } },
      values: {},
      whenNew: { alias },
      rowNumber,
    },
  ];
}
