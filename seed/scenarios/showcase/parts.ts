import { FAMILIES, type FamilySpec, familyId } from "@/seed/scenarios/showcase/families";
import { seedId } from "@/seed/seedId";
import type { PartRow } from "@/seed/tables";

export interface PartSpec {
  readonly key: string;
  readonly family: FamilySpec;
  readonly number: string;
  readonly description: string;
  readonly price: number | null;
  readonly leadWeeks: number | null;
  readonly leadWeeksP80: number | null;
  readonly repairYield: number | null;
  readonly repairTurnaroundDays: number | null;
}

const PRICED_ON = "2026-06-01";

// Family; number with % for the size; sizes and EUR; lead weeks, 80 % point; repair yield, days
const TABLE = `
HR;TM-HR-%;010 1650,020 2250,040 3100,080 4700;8 14;0.60 35
OK;BW-OK-%;010 1800,020 2600,040 3900,080 6000;- -;0.50 45
HE;TM-HE-%;010 1900,020 2500,040 3400,080 5000;9 16;0.75 25
EL;BW-EL-%;010 1750,020 2100,040 2600,080 3725;12 17;0.70 30
BI;CV-BI-%;010 -,020 -,040 -,080 -;- -;0.80 20
LA;CV-LA-%;010 550,020 650,040 800,080 1025;30 38;0.50 40
WR;DV-WR-%;010 820,020 1040,040 1480,080 2250,150 3900;- -;0.85 30
FI;DV-FI-%;010 690,020 880,040 1240,080 1890;8 12;0.80 25
RO;DV-RO-%;010 760,020 960,040 1350,080 2080;- -;0.75 30
S3;MG-SL-%;300 -;- -;0.60 40
S5;MG-SL-%;500 6800;10 16;0.70 30
S7;MG-SL-%;700 7400;8 12;0.80 25
PB;MG-PB-%;16 -;- -;0.70 30
PN;MG-PN-%;16 640;6 9;0.60 25
L8;QF-LU-%;08 -;- -;0.40 30
LX;QF-LU-%;12 1950;7 11;0.60 25
BK;PB-BK-%;240 310;4 6;- -
GL;FB-GL-%;01 85;- -;- -
LR;MG-LR-%;01 -;- -;0.30 40
`;

const orNull = (text: string | undefined): number | null =>
  text === undefined || text === "-" ? null : Number(text);

function readParts(text: string): PartSpec[] {
  const [key = "", pattern = "", sizes = "", lead = "", repair = ""] = text.split(";");
  const family = FAMILIES.find((one) => one.key === key);
  if (!family) throw new RangeError(`key must be a family of the scenario, got ${key}`);
  const [leadWeeks, leadWeeksP80] = lead.split(" ").map(orNull);
  const [repairYield, days] = repair.split(" ").map(orNull);
  return sizes.split(",").map((entry) => {
    const [size = "", price] = entry.split(" ");
    return {
      key: `${key}-${size}`,
      family,
      number: pattern.replace("%", size),
      description: describePart(family, size, sizes.includes(",")),
      price: orNull(price),
      leadWeeks: leadWeeks ?? null,
      leadWeeksP80: leadWeeksP80 ?? null,
      repairYield: repairYield ?? null,
      repairTurnaroundDays: days ?? null,
    };
  });
}

function describePart(family: FamilySpec, size: string, sized: boolean): string {
  if (family.key === "WR" && size === "150")
    return `${family.description}, size ${size}, 6 kW, no matching motor known`;
  return sized ? `${family.description}, size ${size}` : family.description;
}

/** Every part number of the scenario. */
export const PARTS: readonly PartSpec[] = TABLE.trim().split("\n").flatMap(readParts);

const BY_KEY = new Map(PARTS.map((part) => [part.key, part]));

/** The part of a family and size, such as `HR-020`. */
export function partSpec(key: string): PartSpec {
  const part = BY_KEY.get(key);
  if (!part) throw new RangeError(`key must be a part of the scenario, got ${key}`);
  return part;
}

export const partId = (key: string): string => seedId("Part", partSpec(key).number);

/** Rated power of a motor by its size, kW. */
const MOTOR_KW: Readonly<Record<string, number>> = {
  "010": 0.4,
  "020": 0.75,
  "040": 1.5,
  "080": 3,
  "150": 6,
};

function powerOf(key: string, family: FamilySpec): number | null {
  return family.itemClass === "motor" ? (MOTOR_KW[key.slice(3)] ?? null) : null;
}

/** Families of drives on fibre rings, and the profile family of such rings after IEC 61491, from memory. */
const RING_DRIVES = ["HR", "OK"];
const RING_FAMILY = 16;

export function partRows(): PartRow[] {
  return PARTS.map(({ key, family, price, ...part }) => ({
    id: partId(key),
    maker: family.maker,
    number: part.number,
    description: part.description,
    itemClass: family.itemClass,
    familyId: familyId(family.key),
    price,
    priceCurrency: price === null ? null : "EUR",
    pricedOn: price === null ? null : PRICED_ON,
    leadWeeks: part.leadWeeks,
    leadWeeksP80: part.leadWeeksP80,
    repairYield: part.repairYield,
    repairTurnaroundDays: part.repairTurnaroundDays,
    powerKw: powerOf(key, family),
    profileFamily: RING_DRIVES.includes(family.key) ? RING_FAMILY : null,
  }));
}
