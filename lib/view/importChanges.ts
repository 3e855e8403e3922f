import { storedFieldWord, storedWord, thingWord } from "@/lib/view/importWords";

type Kept = string | number | boolean | null;

/** One stored thing an import writes, or would write. */
export interface WrittenThing {
  readonly entity: string;
  readonly rowNumber: number;
  /** What people call it. */
  readonly name: string;
  readonly kind: "add" | "change" | "same";
  readonly before: Readonly<Record<string, Kept>> | null;
  readonly after: Readonly<Record<string, Kept>>;
}

/** How many of one kind of thing are new, other than stored, and as stored. */
export interface ThingCount {
  readonly entity: string;
  readonly label: string;
  readonly added: number;
  readonly changed: number;
  readonly unchanged: number;
}

/** A changed field of a stored thing, in words. */
export interface FieldChange {
  readonly rowNumber: number;
  readonly thing: string;
  readonly name: string;
  readonly field: string;
  readonly before: string;
  readonly after: string;
}

/** Changes handed to the page; the count is of all. */
export const CHANGES_SHOWN = 500;

/** Counts by kind of thing, in the order they are written. */
export function countThings(things: readonly Pick<WrittenThing, "entity" | "kind">[]): ThingCount[] {
  const counts = new Map<string, { add: number; change: number; same: number }>();
  for (const { entity, kind } of things) {
    const count = counts.get(entity) ?? { add: 0, change: 0, same: 0 };
    count[kind] += 1;
    counts.set(entity, count);
  }
  return [...counts].map(([entity, { add, change, same }]) => ({
    entity,
    label: thingWord(entity, true),
    added: add,
    changed: change,
    unchanged: same,
  }));
}

/** The counts of two pieces of a file together. */
export function sumThings(left: readonly ThingCount[], right: readonly ThingCount[]): ThingCount[] {
  const sums = new Map(left.map((one) => [one.entity, one]));
  for (const one of right) {
    const known = sums.get(one.entity);
    sums.set(one.entity, known ? plus(known, one) : one);
  }
  return [...sums.values()];
}

function plus(left: ThingCount, right: ThingCount): ThingCount {
  return {
    ...left,
    added: left.added + right.added,
    changed: left.changed + right.changed,
    unchanged: left.unchanged + right.unchanged,
  };
}

/**
 * What changes from what to what, one field a line, by row of the file.
 *
 * @param nameOf What people call the thing of an id; an id nobody knows stays as it is.
 */
export function listChanges(
  things: readonly WrittenThing[],
  nameOf: (id: string) => string | undefined,
): FieldChange[] {
  const word = (field: string, value: Kept | undefined) =>
    field.endsWith("Id") && typeof value === "string"
      ? (nameOf(value) ?? value)
      : storedWord(field, value ?? null);
  return things
    .filter((thing) => thing.kind === "change")
    .sort((a, b) => a.rowNumber - b.rowNumber)
    .flatMap(({ entity, rowNumber, name, before, after }) =>
      Object.keys(after).map((field) => ({
        rowNumber,
        thing: thingWord(entity, false),
        name,
        field: storedFieldWord(field),
        before: word(field, before?.[field]),
        after: word(field, after[field]),
      })),
    );
}
