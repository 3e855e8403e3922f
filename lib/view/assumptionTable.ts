import type { IsoDate } from "@/lib/kernel/isoDate";
import { type AssumptionField, assumptionFields, assumptionValue } from "@/lib/risk/assumptionFields";
import { productSets } from "@/lib/risk/assumptionSets";
import { type Assumptions, assumptionNotes } from "@/lib/risk/assumptions";
import type { AssumptionChoice } from "@/lib/schema/assumptions";
import { itemClassName } from "@/lib/view/linePart";
import { significant } from "@/lib/view/number";

/** A version of a set that was written down. */
export interface KeptVersion extends AssumptionChoice {
  readonly values: Assumptions;
  /** Where its values come from. */
  readonly note: string;
  readonly owner: string;
  readonly changedOn: IsoDate;
  readonly changedBy: string;
}

/** One number of the assumptions in every set. */
export interface AssumptionRow {
  readonly path: string;
  /** Rows changed together. */
  readonly group: string;
  /** What it holds for: a class of items, or all. */
  readonly of: string;
  readonly name: string;
  readonly unit: string;
  readonly careful: number;
  readonly likely: number;
  readonly bold: number;
  /** Null while nobody has stated an own set. */
  readonly own: number | null;
  readonly inUse: number;
  readonly basis: string;
  readonly owner: string;
  readonly changedOn: IsoDate;
  readonly least: number;
  readonly most: number;
  /** Why it is not changed; null when it may be. */
  readonly fixed: string | null;
}

/** What a version of the own set changed against the one before it. */
export interface VersionRow extends Omit<KeptVersion, "values"> {
  readonly changes: readonly string[];
}

export interface SetsAtHand {
  readonly inUse: AssumptionChoice & { readonly values: Assumptions };
  /** Every version written down, in any order. */
  readonly kept: readonly KeptVersion[];
}

const PRODUCT_OWNER = "Ebbline, product";

const ownVersions = (kept: readonly KeptVersion[]): KeptVersion[] =>
  kept.filter(({ kind }) => kind === "own").sort((a, b) => a.version - b.version);

/** The newest version of the own set. */
export function latestOwn(kept: readonly KeptVersion[]): KeptVersion | undefined {
  return ownVersions(kept).at(-1);
}

/** What a field is called, without what it holds for: `Sources without a spare, open market: time`. */
function fieldName({ note, part }: AssumptionField): string {
  const { title } = assumptionNotes[note];
  return part === "" ? title : `${title}, ${part}`;
}

function placeOf({ itemClass }: AssumptionField): string {
  return itemClass === null ? "all" : itemClassName(itemClass);
}

/** The own version that last changed a value, up to the one in use; undefined is the product's own value. */
function statedBy(field: AssumptionField, { inUse, kept }: SetsAtHand): KeptVersion | undefined {
  if (inUse.kind !== "own") return undefined;
  let before = assumptionValue(productSets.likely.values, field);
  let found: KeptVersion | undefined;
  for (const version of ownVersions(kept)) {
    if (version.version > inUse.version) break;
    const value = assumptionValue(version.values, field);
    if (value !== before) found = version;
    before = value;
  }
  return found;
}

/** Every assumption with its value in each set, and who answers for the one in use. */
export function assumptionRows(sets: SetsAtHand): AssumptionRow[] {
  const own = latestOwn(sets.kept);
  const { careful, likely, bold } = productSets;
  return assumptionFields.map((field) => {
    const stated = statedBy(field, sets);
    return {
      ...{ path: field.path, group: field.group, unit: field.unit, fixed: field.fixed },
      ...field.range,
      of: placeOf(field),
      name: fieldName(field),
      careful: assumptionValue(careful.values, field),
      likely: assumptionValue(likely.values, field),
      bold: assumptionValue(bold.values, field),
      own: own ? assumptionValue(own.values, field) : null,
      inUse: assumptionValue(sets.inUse.values, field),
      basis: stated?.note ?? assumptionNotes[field.note].basis,
      owner: stated?.owner ?? PRODUCT_OWNER,
      changedOn: stated?.changedOn ?? likely.changedOn,
    };
  });
}

/** The versions written down, given from the oldest, newest first and each with what it changed. */
export function versionRows(kept: readonly KeptVersion[]): VersionRow[] {
  const own = ownVersions(kept);
  const rows = kept.map(({ values, ...version }): VersionRow => {
    const before = own.find((one) => one.version === version.version - 1)?.values;
    const base = before ?? productSets.likely.values;
    return { ...version, changes: version.kind === "own" ? changesOf(base, values) : [] };
  });
  return rows.reverse();
}

function changesOf(before: Assumptions, after: Assumptions): string[] {
  return assumptionFields.flatMap((field) => {
    const [was, is] = [assumptionValue(before, field), assumptionValue(after, field)];
    if (was === is) return [];
    return `${fieldName(field)} (${placeOf(field)}): ${assumptionNumber(was)} to ${assumptionNumber(is)} ${field.unit}`;
  });
}

/** A value of the assumptions as it is shown, to four digits and without idle zeros: `0.04`, `240`. */
export function assumptionNumber(value: number): string {
  return significant(value, 4)
    .replace(/(\.\d*?)0+$/, "$1")
    .replace(/\.$/, "");
}
