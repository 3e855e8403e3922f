import "server-only";
import { randomUUID } from "node:crypto";
import type { Transaction } from "@/lib/data/change";
import { findStored, type Stored } from "@/lib/data/intake/stored";
import { ENTITIES, type Entity, type Kept } from "@/lib/intake/intents/intent";
import type { Merged } from "@/lib/intake/intents/mergeIntents";

/** One stored thing as the file would have it, beside how it stands. */
export interface Resolved {
  readonly entity: Entity;
  readonly id: string;
  readonly rowNumber: number;
  readonly key: string;
  readonly kind: "add" | "change" | "same";
  /** Ids of its parents as the file has them. */
  readonly parents: Readonly<Record<string, string>>;
  /** Fields that would be written. */
  readonly after: Readonly<Record<string, Kept>>;
  /** What those fields hold now; null for a new thing. */
  readonly before: Readonly<Record<string, Kept>> | null;
}

/** A thing that cannot be stored, and why. */
export interface Unsettled {
  readonly rowNumber: number;
  readonly field: string | null;
  readonly problem: string;
  readonly remedy: string;
}

/** What a new thing cannot do without, beside its key. */
const NEEDED: Partial<Record<Entity, readonly string[]>> = {
  Site: ["name", "country", "timeZone", "currency"],
};

/**
 * Finds each thing under its natural key, parents first, and tells what the file would add or change.
 *
 * @param ids Ids by the marks of things found before, filled on the way.
 */
export async function resolve(
  tx: Transaction,
  things: readonly Merged[],
  ids = new Map<string, string>(),
): Promise<{ readonly resolved: readonly Resolved[]; readonly unsettled: readonly Unsettled[] }> {
  const resolved: Resolved[] = [];
  const unsettled: Unsettled[] = [];
  for (const entity of ENTITIES) {
    const own = things.filter((thing) => thing.entity === entity);
    const stored = await findStored(
      tx,
      entity,
      own.map((one) => one.key),
    );
    for (const { key } of own) {
      const known = ids.get(mark(entity, key));
      ids.set(mark(entity, key), stored.get(key)?.id ?? known ?? newId(entity, key));
    }
    await findMissingParents(tx, own, ids);
    const outcomes = own.map((thing) => settle(thing, stored.get(thing.key), ids));
    for (const outcome of outcomes) "problem" in outcome ? unsettled.push(outcome) : resolved.push(outcome);
  }
  return { resolved, unsettled };
}

/** Parents the file does not mention itself may still be stored. */
async function findMissingParents(tx: Transaction, things: readonly Merged[], ids: Map<string, string>) {
  const wanted = new Map<Entity, Set<string>>();
  for (const { parents } of things)
    for (const { entity, key } of Object.values(parents))
      if (!ids.has(mark(entity, key))) wanted.set(entity, (wanted.get(entity) ?? new Set()).add(key));
  for (const [entity, keys] of wanted)
    for (const [key, { id }] of await findStored(tx, entity, [...keys])) ids.set(mark(entity, key), id);
}

function settle(
  thing: Merged,
  stored: Stored | undefined,
  ids: ReadonlyMap<string, string>,
): Resolved | Unsettled {
  const { entity, key, rowNumber } = thing;
  const parents: Record<string, string> = {};
  for (const [field, parent] of Object.entries(thing.parents)) {
    const id = ids.get(mark(parent.entity, parent.key));
    if (id === undefined) return fatherless(rowNumber, parent);
    parents[field] = id;
  }
  const about = { entity, rowNumber, key, parents };
  if (!stored) {
    const id = ids.get(mark(entity, key)) ?? newId(entity, key);
    const lacking = NEEDED[entity]?.filter((field) => (thing.values[field] ?? null) === null) ?? [];
    if (lacking.length > 0) return incomplete(thing, lacking);
    const own = entity === "CurrencyRate" ? {} : { id };
    return {
      ...about,
      id,
      kind: "add",
      before: null,
      after: joined(own, thing.whenNew, thing.values, parents),
    };
  }
  const said = { ...thing.values, ...parents };
  const differing = Object.keys(said).filter(
    (field) => !sameValue(field, said[field] ?? null, stored.row[field] ?? null),
  );
  const pick = (from: Readonly<Record<string, Kept>>) =>
    Object.fromEntries(differing.map((field) => [field, from[field] ?? null]));
  const kind = differing.length > 0 ? "change" : "same";
  return { ...about, id: stored.id, kind, before: pick(stored.row), after: pick(said) };
}

/** Fields of several together, the later ones over the earlier; a spread is slow for so many different shapes. */
function joined(...parts: readonly Readonly<Record<string, Kept>>[]): Record<string, Kept> {
  const whole: Record<string, Kept> = {};
  for (const part of parts) for (const field in part) whole[field] = part[field] ?? null;
  return whole;
}

function fatherless(rowNumber: number, parent: { readonly entity: Entity; readonly key: string }): Unsettled {
  return {
    rowNumber,
    field: null,
    problem: `There is no ${parent.entity.toLowerCase()} ${readable(parent.key)} in Ebbline or in this file`,
    remedy: "Load the register that names it first, or correct the spelling",
  };
}

function incomplete({ entity, key, rowNumber }: Merged, lacking: readonly string[]): Unsettled {
  return {
    rowNumber,
    field: null,
    problem: `${entity} ${readable(key)} is new, and the row does not give its ${lacking.join(", ")}`,
    remedy: "Add the columns, or correct the code if it is not new",
  };
}

function readable(key: string): string {
  return key.split("\u241F").join(" ");
}

function newId(entity: Entity, key: string): string {
  return entity === "CurrencyRate" ? key : randomUUID();
}

/** Kind and natural key of a thing as one text. */
export function mark(entity: Entity, key: string): string {
  return `${entity}\n${key}`;
}

/** Instants are equal whatever zone they are written in. */
function sameValue(field: string, left: Kept, right: Kept): boolean {
  if (left === right) return true;
  if (!field.endsWith("At") || typeof left !== "string" || typeof right !== "string") return false;
  return Date.parse(left) === Date.parse(right);
}
