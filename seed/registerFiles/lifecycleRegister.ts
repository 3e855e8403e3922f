import type { RegisterRow } from "@/seed/registerFiles/registerRow";
import type { FamilyRow, HeldTables, LifecycleFactRow, PartRow } from "@/seed/tables";

function datesOf(fact: LifecycleFactRow) {
  return {
    noticeOn: fact.noticeOn,
    lastOrderOn: fact.lastOrderOn,
    lastShipOn: fact.lastShipOn,
    repairUntilOn: fact.repairUntilOn,
    orderByOn: fact.orderByOn,
  };
}

const NO_PART = {
  successor: null,
  leadWeeks: null,
  leadWeeksP80: null,
  price: null,
  currency: null,
  pricedOn: null,
  repairYield: null,
  repairTurnaroundDays: null,
  powerKw: null,
  profileFamily: null,
};

function familyRow({ maker, name, itemClass, description }: FamilyRow, fact: LifecycleFactRow): RegisterRow {
  const { source, checkedOn } = fact;
  return {
    maker,
    family: name,
    partNumber: null,
    description,
    itemClass,
    ...datesOf(fact),
    ...NO_PART,
    source,
    checkedOn,
  };
}

function partRow(part: PartRow, family: FamilyRow, { fact, successor }: Told): RegisterRow {
  return {
    ...familyRow(family, fact),
    partNumber: part.number,
    description: part.description,
    successor,
    leadWeeks: part.leadWeeks,
    leadWeeksP80: part.leadWeeksP80,
    price: part.price,
    currency: part.priceCurrency,
    pricedOn: part.pricedOn,
    repairYield: part.repairYield === null ? null : Math.round(part.repairYield * 100),
    repairTurnaroundDays: part.repairTurnaroundDays,
    powerKw: part.powerKw,
    profileFamily: part.profileFamily,
  };
}

interface Told {
  readonly fact: LifecycleFactRow;
  readonly successor: string | null;
}

/**
 * The purchasing office's list: each family as its maker's bulletins say, then each part with its price, once for
 * each reading of the source. A part with two successors names one in each of its rows.
 */
export function lifecycleRegister(tables: HeldTables): RegisterRow[] {
  const numbers = new Map(tables.Part.map(({ id, number }) => [id, number]));
  const hasSuccessor = new Set(tables.Successor.map(({ partId }) => partId));
  const familyOf = new Map(tables.Family.map((family) => [family.id, family]));
  const families = tables.LifecycleFact.flatMap((fact) => {
    const family = familyOf.get(fact.familyId ?? "");
    return family ? [familyRow(family, fact)] : [];
  });
  // Successors come before what they succeed: a number is only known once its own row was read.
  const parts = [...tables.Part].sort(
    (a, b) => Number(hasSuccessor.has(a.id)) - Number(hasSuccessor.has(b.id)),
  );
  return [
    ...families,
    ...parts.flatMap((part) => {
      const family = familyOf.get(part.familyId);
      const facts = tables.LifecycleFact.filter(({ familyId }) => familyId === part.familyId);
      const next = tables.Successor.filter(({ partId }) => partId === part.id);
      return facts.flatMap((fact, i) => {
        const successor = numbers.get((next[i] ?? next[0])?.successorId ?? "") ?? null;
        return family ? [partRow(part, family, { fact, successor })] : [];
      });
    }),
  ];
}
