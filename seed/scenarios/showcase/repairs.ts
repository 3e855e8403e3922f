import { addDays } from "@/lib/kernel/isoDate";
import { type RandomStream, randomStream } from "@/lib/kernel/random";
import { apportion } from "@/seed/scenarios/showcase/apportion";
import { D0 } from "@/seed/scenarios/showcase/moment";
import { partId, partSpec } from "@/seed/scenarios/showcase/parts";
import { siteId } from "@/seed/scenarios/showcase/sites";
import { seedId } from "@/seed/seedId";
import type { RepairOrderRow } from "@/seed/tables";

interface Out {
  readonly site: string;
  readonly key: string;
  readonly daysAgo: number;
  readonly dueInDays: number;
}

/** Nine Heron R are out; two should have been back more than sixty days ago. */
const OUT: readonly Out[] = [
  { site: "VEL", key: "HR-010", daysAgo: 21, dueInDays: 14 },
  { site: "VEL", key: "HR-040", daysAgo: 132, dueInDays: -97 },
  { site: "OST", key: "HR-020", daysAgo: 12, dueInDays: 23 },
  { site: "OST", key: "HR-010", daysAgo: 30, dueInDays: 5 },
  { site: "KAR", key: "HR-020", daysAgo: 26, dueInDays: 9 },
  { site: "PIN", key: "HR-040", daysAgo: 8, dueInDays: 27 },
  { site: "PIN", key: "HR-020", daysAgo: 103, dueInDays: -68 },
  { site: "TAD", key: "HR-020", daysAgo: 17, dueInDays: 18 },
  { site: "THO", key: "HR-080", daysAgo: 33, dueInDays: 2 },
];

/** Orders that came back, by part and how many. */
const RETURNED = [
  ["HR-010", 8],
  ["HR-020", 18],
  ["HR-040", 10],
  ["HR-080", 4],
  ["HE-020", 8],
  ["BI-020", 15],
] as const;
const NO_FAULT_SHARE = 0.15;
const HOMES = ["VEL", "OST", "KAR", "PIN", "TAD", "THO"] as const;

function findings(key: string, count: number): string[] {
  const good = partSpec(key).repairYield ?? 0;
  const [noFault = 0, repaired = 0, scrap = 0] = apportion(count, [
    NO_FAULT_SHARE,
    good - NO_FAULT_SHARE,
    1 - good,
  ]);
  return [
    ...Array<string>(noFault).fill("no fault found"),
    ...Array<string>(repaired).fill("repaired"),
    ...Array<string>(scrap).fill("beyond repair"),
  ];
}

function returned(chance: RandomStream): Omit<RepairOrderRow, "id" | "reference">[] {
  return RETURNED.flatMap(([key, count]) =>
    chance.shuffle(findings(key, count)).map((finding) => {
      const sentOn = addDays(D0, -chance.integer(90, 1700));
      const days = partSpec(key).repairTurnaroundDays ?? 30;
      const backAfter = Math.round(days * chance.between(0.6, 1.7));
      return {
        siteId: siteId(chance.pick(HOMES)),
        partId: partId(key),
        serial: `${partSpec(key).family.mark}${chance.integer(900_000, 999_999)}`,
        sentOn,
        dueOn: addDays(sentOn, days),
        returnedOn: addDays(sentOn, Math.min(backAfter, 85)),
        finding,
      };
    }),
  );
}

export function repairRows(seed: number): RepairOrderRow[] {
  const chance = randomStream(seed, "repair");
  const out = OUT.map(({ site, key, daysAgo, dueInDays }) => ({
    siteId: siteId(site),
    partId: partId(key),
    serial: `HR${chance.integer(900_000, 999_999)}`,
    sentOn: addDays(D0, -daysAgo),
    dueOn: addDays(D0, dueInDays),
    returnedOn: null,
    finding: null,
  }));
  return [...returned(chance), ...out].map((order, i) => {
    const reference = `RO-${String(2_000 + i)}`;
    return { id: seedId("RepairOrder", reference), reference, ...order };
  });
}
