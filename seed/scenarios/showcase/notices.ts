import { USUAL_CYCLE } from "@/lib/lifecycle/orderBy";
import { familyId } from "@/seed/scenarios/showcase/families";
import { PARTS, partId } from "@/seed/scenarios/showcase/parts";
import { supplyFactRows } from "@/seed/scenarios/showcase/supplyFacts";
import { seedId } from "@/seed/seedId";
import type { NoticePartRow, NoticeRow } from "@/seed/tables";

/** The bulletins whose last order lies ahead, by family and the source of their statement. */
const AHEAD = [
  {
    ...{ key: "HR", maker: "Tarnholt Motion", source: "Invented bulletin Tarnholt 2026-14" },
    ...{ patterns: "TM-HR-*", successor: "TM-HE-*" },
  },
  {
    ...{ key: "S5", maker: "Mossgate", source: "Invented bulletin Mossgate 2025-19" },
    ...{ patterns: "Slate 5", successor: "MG-SL-700" },
  },
] as const;

const noticeId = (key: string) => seedId("Notice", key);

/** The statement a bulletin made when it was first read. */
function firstFact(key: string, source: string) {
  const facts = supplyFactRows().filter((fact) => fact.familyId === familyId(key) && fact.source === source);
  const [first] = facts.sort((a, b) => (a.recordedOn < b.recordedOn ? -1 : 1));
  if (!first) throw new RangeError(`source must be one of ${key}, got ${source}`);
  return first;
}

/** Notices nobody has decided on yet, typed in when the bulletin was read. */
export function noticeRows(): NoticeRow[] {
  return AHEAD.map(({ key, maker, source, patterns, successor }) => {
    const { noticeOn, lastOrderOn, lastShipOn, repairUntilOn, orderByOn, ...fact } = firstFact(key, source);
    return {
      ...{ id: noticeId(key), maker, document: source, patterns, successor, note: "" },
      ...{ noticeOn, lastOrderOn, lastShipOn, repairUntilOn, orderByOn },
      ...{ checkedOn: fact.checkedOn, recordedOn: fact.recordedOn, evidence: fact.evidence },
      ...{ ...USUAL_CYCLE, recordedBy: "Planner of the demonstration" },
    };
  });
}

/** The parts each notice is of; the statement stands once for the family. */
export function noticePartRows(): NoticePartRow[] {
  return AHEAD.flatMap(({ key, source }) =>
    PARTS.filter(({ family }) => family.key === key).map((part) => ({
      ...{ noticeId: noticeId(key), partId: partId(part.key), factId: firstFact(key, source).id },
    })),
  );
}
