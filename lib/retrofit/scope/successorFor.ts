import { err, ok, type Result } from "@/lib/kernel/result";
import type { PartFact, ScopeFacts } from "@/lib/retrofit/scope/scopeFacts";

type Catalogue = Pick<ScopeFacts, "parts" | "successors">;

/** Parts that follow each other in a circle, the first again last. */
export interface SuccessorLoop {
  readonly numbers: readonly string[];
}

/** The part that takes another's place. */
export interface FoundSuccessor {
  readonly part: PartFact;
  /** Recorded as a successor, or only the part of the family with the same size mark. */
  readonly basis: "recorded" | "same size";
  readonly condition: string | null;
}

/** The last group of digits of a part number: makers write the size there (common practice, no source). */
export function sizeMark(number: string): string | null {
  return /-(\d+)$/.exec(number)?.[1] ?? null;
}

/**
 * Finds what takes a part's place in a family: the nearest recorded successor of that family, over any number of
 * steps, else the part of the family with the same size mark. Among several as near, the same size, then by number.
 *
 * @returns null when neither is on record; whether a rating fits is never decided here.
 */
export function successorIn(part: PartFact, family: string, catalogue: Catalogue): FoundSuccessor | null {
  return recorded(part, family, catalogue) ?? sameSize(part, family, catalogue);
}

function recorded(part: PartFact, family: string, { parts, successors }: Catalogue): FoundSuccessor | null {
  const seen = new Set([part.id]);
  let front: { id: string; condition: string | null }[] = [{ id: part.id, condition: null }];
  while (front.length > 0) {
    const next = front.flatMap((from) =>
      successors
        .filter(({ partId, successorId }) => partId === from.id && !seen.has(successorId))
        .map(({ successorId, condition }) => ({
          id: successorId,
          condition: join(from.condition, condition),
        })),
    );
    for (const { id } of next) seen.add(id);
    const found = next.flatMap(({ id, condition }) =>
      parts
        .filter((one) => one.id === id && one.family === family)
        .map((one): FoundSuccessor => ({ part: one, basis: "recorded", condition })),
    );
    const [first] = found.sort((a, b) => byNearness(part, a.part, b.part));
    if (first) return first;
    front = next;
  }
  return null;
}

function sameSize(part: PartFact, family: string, { parts }: Catalogue): FoundSuccessor | null {
  const mark = sizeMark(part.number);
  if (mark === null) return null;
  const [first] = parts
    .filter((one) => one.family === family && sizeMark(one.number) === mark)
    .sort((a, b) => (a.number < b.number ? -1 : 1));
  return first ? { part: first, basis: "same size", condition: null } : null;
}

function byNearness(from: PartFact, a: PartFact, b: PartFact): number {
  const strange = ({ number }: PartFact) => Number(sizeMark(number) !== sizeMark(from.number));
  return strange(a) - strange(b) || (a.number < b.number ? -1 : 1);
}

const join = (a: string | null, b: string | null) => (a === null || b === null ? (b ?? a) : `${a} ${b}`);

/** Refuses parts that follow themselves, over however many steps, by name; else nothing. */
export function refuseLoops(
  from: readonly string[],
  { parts, successors }: Catalogue,
): Result<null, SuccessorLoop> {
  const next = new Map<string, string[]>();
  for (const { partId, successorId } of successors)
    next.set(partId, [...(next.get(partId) ?? []), successorId]);
  const numberOf = new Map(parts.map(({ id, number }) => [id, number]));
  const cleared = new Set<string>();
  const walk = (id: string, way: readonly string[]): readonly string[] | null => {
    const before = way.indexOf(id);
    if (before >= 0) return [...way.slice(before), id];
    if (cleared.has(id)) return null;
    for (const to of next.get(id) ?? []) {
      const loop = walk(to, [...way, id]);
      if (loop) return loop;
    }
    cleared.add(id);
    return null;
  };
  for (const id of from) {
    const loop = walk(id, []);
    if (loop) return err({ numbers: loop.map((one) => numberOf.get(one) ?? "a part not named") });
  }
  return ok(null);
}
