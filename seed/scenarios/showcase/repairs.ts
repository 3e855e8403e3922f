import { addDays, addMonths } from "@/lib/kernel/isoDate";
import { type RandomStream, randomStream } from "@/lib/kernel/random";
import type { RepairOrderRow } from "@/seed/countTables";
import { apportion } from "@/seed/scenarios/showcase/apportion";
import { D0 } from "@/seed/scenarios/showcase/moment";
import { partId, partSpec } from "@/seed/scenarios/showcase/parts";
import { siteId } from "@/seed/scenarios/showcase/sites";
import { seedId } from "@/seed/seedId";

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

/** An order as it was sent and came back, before it is known who repaired it and for how much. */
type Trip = Pick<
  RepairOrderRow,
  "siteId" | "partId" | "serial" | "sentOn" | "dueOn" | "returnedOn" | "finding"
>;

function returned(chance: RandomStream): (Trip & { readonly key: string })[] {
  return RETURNED.flatMap(([key, count]) =>
    chance.shuffle(findings(key, count)).map((finding) => {
      const sentOn = addDays(D0, -chance.integer(90, 1700));
      const days = partSpec(key).repairTurnaroundDays ?? 30;
      const backAfter = Math.round(days * chance.between(0.6, 1.7));
      return {
        key,
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

const FAULTS = [
  "Trips on overcurrent at start",
  "No display, fan runs",
  "Lost feedback after warming up",
  "Burnt smell, will not power up",
  "Ring fault, sporadic",
] as const;
const INDEPENDENT = "Quellbrook repair shop";
const INDEPENDENT_SHARE = 0.4;
const WARRANTY_MONTHS = 12;

/** Who repaired it and what it cost, from a stream of its own, so that the trips stay as they are. */
function termsOf(key: string, trip: Trip, chance: RandomStream) {
  const { family, price } = partSpec(key);
  const repairer = chance.next() < INDEPENDENT_SHARE ? INDEPENDENT : `${family.maker} service`;
  const fault = chance.pick(FAULTS);
  const share = chance.between(0.2, 0.45);
  const isDone = trip.returnedOn !== null && trip.finding === "repaired";
  const cost = isDone && price !== null ? (price * share).toFixed(2) : null;
  return {
    ...{ repairer, fault, cost, costCurrency: cost === null ? null : "EUR" },
    warrantyUntilOn: isDone && trip.returnedOn !== null ? addMonths(trip.returnedOn, WARRANTY_MONTHS) : null,
  };
}

/** One drive that went out again forty-one days after it had come back as repaired. */
function sentAgain(trips: readonly (Trip & { readonly key: string })[]): Trip & { readonly key: string } {
  const first = trips.find(
    ({ key, finding, sentOn }) => key === "HE-020" && finding === "repaired" && sentOn < addDays(D0, -250),
  );
  if (!first?.returnedOn) throw new RangeError("trips must hold a repaired HE-020 that came back, got none");
  const sentOn = addDays(first.returnedOn, 41);
  return { ...first, sentOn, dueOn: addDays(sentOn, 25), returnedOn: addDays(sentOn, 30) };
}

export function repairRows(seed: number): RepairOrderRow[] {
  const chance = randomStream(seed, "repair");
  const out = OUT.map(({ site, key, daysAgo, dueInDays }) => ({
    key,
    siteId: siteId(site),
    partId: partId(key),
    serial: `HR${chance.integer(900_000, 999_999)}`,
    sentOn: addDays(D0, -daysAgo),
    dueOn: addDays(D0, dueInDays),
    returnedOn: null,
    finding: null,
  }));
  const back = returned(chance);
  const terms = randomStream(seed, "repair terms");
  return [...back, ...out, sentAgain(back)].map(({ key, ...trip }, i) => {
    const reference = `RO-${String(2_000 + i)}`;
    return { id: seedId("RepairOrder", reference), reference, ...trip, ...termsOf(key, trip, terms) };
  });
}
