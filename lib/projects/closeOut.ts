import type { IsoDate } from "@/lib/kernel/isoDate";

/** What testing a removed unit said of it. */
export type ReleaseResult = "usable" | "unproven" | "needs_repair" | "scrapped";

/** What somebody may answer for with name and day. */
export type CloseStatementKind =
  | "register"
  | "drawings"
  | "levels"
  | "commitments"
  | "no_axes"
  | "none_removed";

/** A record the facts are about; `id` leads back to it. */
interface Named {
  readonly id: string;
  /** What people call it. */
  readonly name: string;
}

/** What the records say of a project that is to be closed. */
export interface CloseFacts {
  /** Axes of the project. `unsigned`: safety checks without two names. */
  readonly axes: readonly (Named & { readonly acceptedOn: IsoDate | null; readonly unsigned: number })[];
  /** Drive places of those axes; `fitted` null is no new unit recorded. */
  readonly places: readonly (Named & {
    readonly fitted: { readonly serial: string; readonly firmware: string; readonly added: boolean } | null;
    /** Whether a removed unit is recorded from here. */
    readonly cameOut: boolean;
  })[];
  /** Parts the project was to take out, with the units of them that still stand in the line. */
  readonly standing: readonly (Named & { readonly units: number })[];
  readonly removed: readonly (Named & { readonly result: ReleaseResult | null; readonly bin: string })[];
  /** Controllers of the axes: the last day an axis was tuned, and the newest copy kept. */
  readonly controllers: readonly (Named & {
    readonly tunedOn: IsoDate | null;
    readonly backupOn: IsoDate | null;
  })[];
  readonly stated: readonly CloseStatementKind[];
  readonly points: readonly (Named & { readonly blocks: boolean; readonly done: boolean })[];
  /** Orders that no invoice has closed. */
  readonly commitments: readonly Named[];
  readonly gates: readonly (Named & { readonly passed: boolean })[];
}

export type CloseTopic =
  | "axes"
  | "safety"
  | "standing"
  | "fitted"
  | "accounted"
  | "removed"
  | "backups"
  | "register"
  | "drawings"
  | "levels"
  | "points"
  | "money"
  | "gates";

/** Why a project cannot be closed yet. */
export interface Lack {
  /** Record it is about; null is about none. */
  readonly id: string | null;
  readonly text: string;
}

/** One thing that must be true before a project is closed. */
export interface CloseItem {
  readonly topic: CloseTopic;
  /** Records looked at. */
  readonly of: number;
  /** Empty is in order. */
  readonly missing: readonly Lack[];
}

/**
 * Holds the records of a project against what must be true before it is closed.
 *
 * Each topic is always there, in the order of the work. The project may be closed when nothing is missing in any.
 */
export function closeOut(facts: CloseFacts): CloseItem[] {
  const { axes, places, standing, removed, controllers, points, commitments, gates } = facts;
  return [
    { topic: "axes", of: axes.length, missing: axesMissing(facts) },
    { topic: "safety", of: axes.length, missing: namesMissing(facts) },
    { topic: "standing", of: standing.length, missing: stillStanding(facts) },
    { topic: "fitted", of: places.length, missing: newUnitsMissing(facts) },
    { topic: "accounted", of: places.length, missing: whereabouts(facts) },
    { topic: "removed", of: removed.length, missing: untested(facts) },
    { topic: "backups", of: controllers.length, missing: copiesMissing(facts) },
    ...(["register", "drawings", "levels"] as const).map((kind) => said(facts, kind)),
    { topic: "points", of: points.length, missing: blocking(facts) },
    { topic: "money", of: commitments.length, missing: ordersOpen(facts) },
    { topic: "gates", of: gates.length, missing: gatesAhead(facts) },
  ];
}

const lack = (text: string): Lack => ({ id: null, text });

function axesMissing({ axes, stated }: CloseFacts): Lack[] {
  if (axes.length === 0)
    return stated.includes("no_axes")
      ? []
      : [lack("No axis belongs to the project, and nobody said that none does.")];
  return axes
    .filter(({ acceptedOn }) => acceptedOn === null)
    .map(({ id, name }) => ({ id, text: `${name} is not accepted.` }));
}

function namesMissing({ axes }: CloseFacts): Lack[] {
  return axes
    .filter(({ unsigned }) => unsigned > 0)
    .map(({ id, name, unsigned }) => ({
      id,
      text: `${name}: ${unsigned === 1 ? "1 safety check lacks" : `${unsigned} safety checks lack`} two different names.`,
    }));
}

function stillStanding({ standing }: CloseFacts): Lack[] {
  return standing
    .filter(({ units }) => units > 0)
    .map(({ id, name, units }) => ({
      id,
      text:
        units === 1
          ? `1 ${name} that is to leave still stands in the line.`
          : `${units} ${name} that are to leave still stand in the line.`,
    }));
}

function newUnitsMissing({ places }: CloseFacts): Lack[] {
  return places.flatMap(({ id, name, fitted }) => {
    if (fitted === null) return [{ id, text: `${name}: no new unit is recorded.` }];
    if (fitted.serial === "") return [{ id, text: `${name}: the new unit has no serial number.` }];
    return fitted.firmware === ""
      ? [{ id, text: `${name}: nobody wrote the firmware of the new unit.` }]
      : [];
  });
}

function whereabouts({ places, removed, stated }: CloseFacts): Lack[] {
  if (removed.length === 0 && places.length === 0 && !stated.includes("none_removed"))
    return [lack("No removed unit is recorded, and nobody said that nothing came out.")];
  return places
    .filter(({ fitted, cameOut }) => fitted !== null && !fitted.added && !cameOut)
    .map(({ id, name }) => ({ id, text: `${name}: nothing says what became of the old unit.` }));
}

function untested({ removed }: CloseFacts): Lack[] {
  return removed.flatMap(({ id, name, result, bin }) => {
    if (result === null) return [{ id, text: `${name} is removed, untested.` }];
    return result !== "scrapped" && bin === ""
      ? [{ id, text: `${name} is tested, but no bin is named.` }]
      : [];
  });
}

function copiesMissing({ controllers }: CloseFacts): Lack[] {
  return controllers.flatMap(({ id, name, tunedOn, backupOn }) => {
    if (tunedOn === null)
      return [{ id, text: `${name}: none of its axes is tuned, so no copy is from after.` }];
    if (backupOn === null) return [{ id, text: `${name}: no copy is recorded.` }];
    return backupOn < tunedOn
      ? [{ id, text: `${name}: the newest copy is of ${backupOn}, the tuning of ${tunedOn}.` }]
      : [];
  });
}

const NOT_SAID = {
  register: "Nobody confirmed that the register is up to date.",
  drawings: "Nobody confirmed that the drawings show what was built.",
  levels: "Nobody confirmed the minimum and maximum of the old and the new parts.",
} as const;

function said({ stated }: CloseFacts, kind: keyof typeof NOT_SAID): CloseItem {
  return { topic: kind, of: 1, missing: stated.includes(kind) ? [] : [lack(NOT_SAID[kind])] };
}

function blocking({ points }: CloseFacts): Lack[] {
  return points
    .filter(({ blocks, done }) => blocks && !done)
    .map(({ id, name }) => ({ id, text: `Open and in the way of acceptance: ${name}` }));
}

function ordersOpen({ commitments, stated }: CloseFacts): Lack[] {
  if (stated.includes("commitments")) return [];
  return commitments.map(({ id, name }) => ({
    id,
    text: `${name} is ordered and not invoiced, and nobody said why that may stay.`,
  }));
}

function gatesAhead({ gates }: CloseFacts): Lack[] {
  return gates
    .filter(({ passed }) => !passed)
    .map(({ id, name }) => ({ id, text: `“${name}” is not passed.` }));
}
