import { familyId } from "@/seed/scenarios/showcase/families";
import { seedId } from "@/seed/seedId";
import type { LifecycleFactRow } from "@/seed/tables";

// Family; notice, last order, last ship, repair until, order by; source; days it was read
const TABLE = `
HR;- - - - -;Invented supply list Tarnholt 2024-2;2024-12-10
HR;2026-10-30 2027-04-30 2027-10-29 2031-12-31 2027-02-26;Invented bulletin Tarnholt 2026-14;2026-11-02
OK;2020-06-15 2021-06-30 2022-06-30 2025-12-31 -;Invented bulletin Brindlewick 2020-08;2024-12-10 2026-09-07
HE;- - - - -;Invented supply list Tarnholt 2024-2;2024-12-10
HE;- - - - -;Invented supply list Tarnholt 2026-2;2026-09-07
EL;- - - - -;Invented supply list Brindlewick 2024-1;2024-12-10
EL;- - - - -;Invented supply list Brindlewick 2026-1;2026-09-08
BI;2015-03-02 2016-03-31 2016-12-30 2027-09-30 -;Invented bulletin Corvane 2015-03;2024-12-10 2026-08-24
LA;- - - - -;Invented supply list Corvane 2025-1;2024-12-10 2026-08-24
WR;2012-05-07 2013-05-31 2014-05-30 2028-12-31 -;Invented bulletin Duskvale 2012-05;2024-12-10 2026-07-13
FI;- - - - -;Invented supply list Duskvale 2025-3;2024-12-10 2026-07-13
RO;2021-09-06 2022-09-30 2023-09-29 2030-12-31 -;Invented bulletin Duskvale 2021-11;2024-12-10 2026-07-13
S3;2013-02-04 2014-02-28 2015-02-27 2024-12-31 -;Invented bulletin Mossgate 2013-02;2024-12-10 2026-06-22
S5;- - - - -;Invented supply list Mossgate 2024-2;2024-12-10
S5;2025-11-17 2028-06-30 2029-06-29 2034-12-31 2028-04-28;Invented bulletin Mossgate 2025-19;2025-11-24 2026-06-22
S7;- - - - -;Invented supply list Mossgate 2024-2;2024-12-10 2026-06-22
PB;2018-10-01 2019-12-31 2020-12-31 2026-12-31 -;Invented bulletin Mossgate 2018-12;2024-12-10 2026-06-22
PN;- - - - -;Invented supply list Mossgate 2024-2;2024-12-10 2026-06-22
L8;2018-03-05 2019-03-29 2019-12-31 2023-12-31 -;Invented bulletin Quillfeather 2018-04;2024-12-10 2026-05-11
LX;- - - - -;Invented supply list Quillfeather 2025-1;2024-12-10 2026-05-11
BK;- - - - -;Invented supply list Pebbleton 2025-1;2024-12-10 2026-05-11
GL;2023-06-30 2024-06-28 2024-12-31 - -;Invented letter of Fernsby of June 2023;2024-12-10 2026-10-05
LR;2022-09-12 2023-09-29 2024-03-29 2026-09-30 -;Invented bulletin Mossgate 2022-17;2024-12-10 2026-06-22
`;

const orNull = (text: string | undefined): string | null =>
  text === undefined || text === "-" ? null : text;

/**
 * What the invented makers say about supply, once for each day somebody read it.
 *
 * Each reading is a row, so that an earlier as-of date has a source that was fresh then.
 */
export function supplyFactRows(): LifecycleFactRow[] {
  return TABLE.trim().split("\n").flatMap(readFact);
}

function readFact(text: string): LifecycleFactRow[] {
  const [family = "", dates = "", source = "", days = ""] = text.split(";");
  const [noticeOn, lastOrderOn, lastShipOn, repairUntilOn, orderByOn] = dates.split(" ").map(orNull);
  return days.split(" ").map((day) => ({
    id: seedId("LifecycleFact", `${family}/${source}/${day}`),
    partId: null,
    familyId: familyId(family),
    noticeOn: noticeOn ?? null,
    lastOrderOn: lastOrderOn ?? null,
    lastShipOn: lastShipOn ?? null,
    repairUntilOn: repairUntilOn ?? null,
    orderByOn: orderByOn ?? null,
    source,
    checkedOn: day,
    recordedOn: day,
    evidence: "documented",
  }));
}
