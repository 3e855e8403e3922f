import type { Values } from "@/lib/intake/checkRow";
import type { Catalogue, FoundPart, KnownPart } from "@/lib/intake/intents/catalogue";
import type { RowProblem } from "@/lib/intake/intents/cells";
import { type Intent, type Kept, keyOf } from "@/lib/intake/intents/intent";
import { partValue, textValue } from "@/lib/intake/rowValues";

/** Where a row names a part, and what a new part would be. */
export interface PartMention {
  readonly partField: string;
  readonly makerField: string;
  readonly itemClass: string | null;
  readonly description: string | null;
}

/** The part a row means: its key and revision, the intent that makes it when new, or what is in doubt. */
export interface MeantPart {
  readonly key: string | null;
  readonly revision: string | null;
  readonly intents: readonly Intent[];
  readonly problems: readonly RowProblem[];
}

const nothing: MeantPart = { key: null, revision: null, intents: [], problems: [] };

/** Resolves the part a row names against the catalogue; a new one joins the catalogue, so that it is made once. */
export function meantPart(
  row: Values,
  mention: PartMention,
  { catalogue, rowNumber }: { readonly catalogue: Catalogue; readonly rowNumber: number },
): MeantPart {
  const written = partValue(row, mention.partField);
  const own = ownNumber(row, written?.raw ?? null, catalogue);
  if (own !== null) return { ...nothing, key: keyOf(own.maker, own.number) };
  if (written === null) return nothing;
  const found = catalogue.find(written, textValue(row, mention.makerField));
  if (found.kind === "known")
    return { ...nothing, key: keyOf(found.maker, found.number), revision: found.revision };
  if (found.kind === "doubt") return doubtful(mention.partField, written.raw, found.candidates);
  return newPart(found, mention, { catalogue, rowNumber });
}

/** A part by the site's storeroom number, where the row gives no maker's number, or gives that one in its place. */
function ownNumber(row: Values, raw: string | null, catalogue: Catalogue): KnownPart | null {
  const site = textValue(row, "siteCode");
  const number = raw ?? textValue(row, "storeroomNumber");
  return site === null || number === null ? null : catalogue.findStoreroom(site, number);
}

function doubtful(field: string, raw: string, candidates: readonly string[]): MeantPart {
  const problem = `“${raw}” may mean ${candidates.join(" or ")}`;
  const remedy = "Write the maker and the number as on the nameplate, and load the file again";
  return { ...nothing, problems: [{ field, problem, remedy }] };
}

function newPart(
  found: Extract<FoundPart, { kind: "new" }>,
  { partField, itemClass, description }: PartMention,
  { catalogue, rowNumber }: { readonly catalogue: Catalogue; readonly rowNumber: number },
): MeantPart {
  const { maker, number, revision } = found;
  if (maker === null || itemClass === null) {
    const lacking = maker === null ? "its maker" : "what kind of item it is";
    const problem = `${number} is not known yet, and the row does not say ${lacking}`;
    const remedy = "Load the supply dates that name the part first, or fill the column";
    return { ...nothing, problems: [{ field: partField, problem, remedy }] };
  }
  catalogue.add({ maker, number, itemClass, aliases: [] });
  const whenNew: Record<string, Kept> = { maker, number, itemClass, description: description ?? number };
  const key = keyOf(maker, number);
  const intent: Intent = { entity: "Part", key, parents: {}, values: {}, whenNew, rowNumber };
  return { key, revision, intents: [intent], problems: [] };
}
