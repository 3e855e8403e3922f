import type { AxisFacts, FactGroup, HomingMethod } from "@/lib/schema/axisFacts";
import { evidenceView } from "@/lib/view/evidence";
import { NOT_KNOWN } from "@/lib/view/number";
import { day } from "@/lib/view/time";

const HOMING: Readonly<Record<HomingMethod, string>> = {
  to_switch: "to a switch",
  to_marker: "to a marker",
  to_switch_then_marker: "to a switch, then a marker",
  to_end_stop: "to an end stop",
  absolute_encoder: "absolute encoder",
  none: "none needed",
};

/** How an axis finds its position, in words; null is not known. */
export function homingName(method: HomingMethod | null): string {
  return method === null ? NOT_KNOWN : HOMING[method];
}

/** What a field of the facts is called on screen. */
export const FACT_LABELS: Readonly<Record<keyof AxisFacts, string>> = {
  powerCable: "Power cable",
  powerCableLength: "Length of the power cable",
  powerCableInChain: "Power cable in a moving chain",
  powerCableEvidence: "How well the power cable is known",
  powerCableReadOn: "Power cable read on",
  feedbackCable: "Feedback cable",
  feedbackCableLength: "Length of the feedback cable",
  feedbackCableInChain: "Feedback cable in a moving chain",
  feedbackCableEvidence: "How well the feedback cable is known",
  feedbackCableReadOn: "Feedback cable read on",
  travelUnit: "Unit of travel",
  travel: "Travel",
  hardLow: "Hardware end, low",
  hardHigh: "Hardware end, high",
  softLow: "Software end, low",
  softHigh: "Software end, high",
  travelEvidence: "How well the travel is known",
  travelReadOn: "Travel read on",
  homing: "Homing",
  homeOffset: "Home offset",
  homingEvidence: "How well the homing is known",
  homingReadOn: "Homing read on",
};

type Cable = "powerCable" | "feedbackCable";

/** A cable in words: `4G2.5 shielded, 12.5 m, in a moving chain`; not known when nothing of it is. */
export function cableWords(facts: AxisFacts, cable: Cable): string {
  const [type, length, inChain] = [facts[cable], facts[`${cable}Length`], facts[`${cable}InChain`]];
  if (type === null && length === null && inChain === null) return NOT_KNOWN;
  return [
    type ?? "type not known",
    length === null ? "length not known" : `${length} m`,
    inChain === null ? "chain not known" : inChain ? "in a moving chain" : "not in a moving chain",
  ].join(", ");
}

const inUnit = (facts: Pick<AxisFacts, "travelUnit">) => facts.travelUnit ?? "(unit not known)";

/** The whole travel: `350 deg`. */
export function wayWords(facts: Pick<AxisFacts, "travel" | "travelUnit">): string {
  return facts.travel === null ? NOT_KNOWN : `${facts.travel} ${inUnit(facts)}`;
}

/** Both ends of the travel: `-5 to 355 deg`. */
export function endsWords(facts: AxisFacts, ends: "hard" | "soft"): string {
  const [low, high] = [facts[`${ends}Low`], facts[`${ends}High`]];
  if (low === null && high === null) return NOT_KNOWN;
  return `${low ?? NOT_KNOWN} to ${high ?? NOT_KNOWN} ${inUnit(facts)}`;
}

/** Homing with its offset: `to a switch, offset 12.5 mm`. */
export function homingWords(facts: Pick<AxisFacts, "homing" | "homeOffset" | "travelUnit">): string {
  const offset = facts.homeOffset === null ? "" : `, offset ${facts.homeOffset} ${inUnit(facts)}`;
  return `${homingName(facts.homing)}${offset}`;
}

/** How well a group of facts is known and since when: `measured 14 Sep 2026`; null when nothing of it is. */
export function knownWords(facts: AxisFacts, group: FactGroup): string | null {
  const [evidence, on] = [facts[`${group}Evidence`], facts[`${group}ReadOn`]];
  if (evidence === null) return null;
  return `${evidenceView(evidence).text}${on === null ? ", day not known" : ` ${day(on)}`}`;
}

/** What does not fit together in the record of the travel; empty when nothing strikes. */
export function travelFindings({ hardLow, hardHigh, softLow, softHigh, travel }: AxisFacts): string[] {
  const findings: string[] = [];
  if (hardLow !== null && softLow !== null && softLow < hardLow)
    findings.push("The software end lies beyond the hardware end at the low side.");
  if (hardHigh !== null && softHigh !== null && softHigh > hardHigh)
    findings.push("The software end lies beyond the hardware end at the high side.");
  if (travel !== null && softLow !== null && softHigh !== null && softHigh - softLow > travel)
    findings.push(`Between the software ends lie ${softHigh - softLow}, more than the travel of ${travel}.`);
  return findings;
}

/** A fact in words, for telling what somebody else wrote. */
export function factWord(value: AxisFacts[keyof AxisFacts]): string {
  if (value === null) return NOT_KNOWN;
  if (typeof value === "boolean") return value ? "yes" : "no";
  return typeof value === "string" && Object.hasOwn(HOMING, value)
    ? HOMING[value as HomingMethod]
    : String(value);
}

const isFact = (name: string): name is keyof AxisFacts => Object.hasOwn(FACT_LABELS, name);

/** The facts alone of something that holds more. */
export function plainFacts(axis: AxisFacts): AxisFacts {
  return Object.fromEntries(Object.entries(axis).filter(([name]) => isFact(name))) as unknown as AxisFacts;
}

/** The facts a filled form gives; an empty field is not known. The schema checks them. */
export function readFacts(text: (name: keyof AxisFacts) => string): AxisFacts {
  return Object.fromEntries(
    Object.keys(FACT_LABELS)
      .filter(isFact)
      .map((name) => [name, readFact(name, text(name))]),
  ) as unknown as AxisFacts;
}

const NUMBERS: ReadonlySet<string> = new Set([
  ...["powerCableLength", "feedbackCableLength", "travel", "hardLow", "hardHigh", "softLow", "softHigh"],
  "homeOffset",
]);

function readFact(name: keyof AxisFacts, text: string): AxisFacts[keyof AxisFacts] {
  if (text === "") return null;
  if (name.endsWith("InChain")) return text === "yes";
  return NUMBERS.has(name) ? Number(text) : text;
}
