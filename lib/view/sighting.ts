import type { SightFinding, SightKind } from "@/lib/intake/sightings/compareSources";
import type { RegisterItem, SeenDevice } from "@/lib/intake/sightings/device";
import type { MatchWay } from "@/lib/intake/sightings/matchDevices";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { count, plainNumber } from "@/lib/view/number";

export type SightAnswer = "taken" | "kept" | "retired";

/** What a person decided of a finding. */
export interface SightVerdict {
  readonly id: string;
  readonly mark: string;
  readonly what: string;
  readonly answer: SightAnswer;
  readonly reason: string;
  readonly decidedOn: IsoDate;
  readonly decidedBy: string;
}

/** A finding as the page shows it. Plain data. */
export interface SightRow {
  readonly mark: string;
  readonly kind: SightKind;
  /** Where it is on record, or where it was seen. */
  readonly place: string;
  readonly href: string | null;
  /** What was seen, in words. */
  readonly device: string;
  readonly source: string | null;
  readonly seenOn: IsoDate | null;
  readonly firstOn: IsoDate | null;
  /** What both sides say, a line each. */
  readonly said: readonly string[];
  readonly by: MatchWay | null;
  readonly verdict: SightVerdict | null;
  /** What may be answered. */
  readonly answers: readonly SightAnswer[];
}

export const SIGHT_KINDS: Readonly<Record<SightKind, { readonly name: string; readonly lead: string }>> = {
  agrees: { name: "Agrees", lead: "Both say the same." },
  adds: { name: "Fills a gap", lead: "The list gives what the register leaves open." },
  differs: { name: "Differs", lead: "Number, level, serial number or firmware are not the same." },
  elsewhere: { name: "On record elsewhere", lead: "The register has this serial number at another place." },
  unregistered: { name: "Not on record", lead: "Seen, and nothing on record stands there." },
  unseen: { name: "Not seen", lead: "On record where the list looked, and not in it." },
};

const FIELDS = {
  number: "number",
  revision: "level",
  serial: "serial number",
  firmware: "firmware",
} as const;

/** Where something is on record: `VEL-01 / M03 / A02-T1`. */
export function itemWords({ kind, lineCode, machineCode, designation }: RegisterItem): string {
  return kind === "controller"
    ? `Controller ${designation}`
    : [lineCode, machineCode, designation].filter((part) => part !== null).join(" / ");
}

/** Where something was seen: `VEL-01-R1, node 7`. */
export function deviceWords({ network, controller, slot, address, name }: SeenDevice): string {
  const where = network || controller;
  return [where, slot && `slot ${slot}`, `address ${address}`, name].filter(Boolean).join(", ");
}

function saidOf({ kind, item, device, differences, elsewhere, lastSeenOn }: SightFinding): string[] {
  if (kind === "unseen")
    return [lastSeenOn === null ? "No list ever saw it" : `Last seen in a list on ${lastSeenOn}`];
  if (kind === "unregistered" && device)
    return [
      [device.maker, device.number, device.revision].filter(Boolean).join(" ") || "no number given",
    ].concat(device.serial === "" ? [] : [`serial ${device.serial}`]);
  return [
    ...(elsewhere ? [`Serial ${device?.serial} is on record at ${itemWords(elsewhere)}`] : []),
    ...differences.map(
      ({ field, register, seen, lookAlike }) =>
        `${FIELDS[field]}: register ${register ?? "not known"}, seen ${seen}${lookAlike ? " (only letters that look like digits differ)" : ""}`,
    ),
    ...(item?.kind === "place" && device?.firmware ? [`firmware seen ${device.firmware}`] : []),
  ];
}

/** What a person may answer to each kind of finding. */
const ANSWERS: Readonly<Record<SightKind, readonly SightAnswer[]>> = {
  agrees: [],
  adds: ["taken", "kept"],
  differs: ["taken", "kept"],
  elsewhere: ["taken", "kept"],
  unregistered: ["kept"],
  unseen: ["kept", "retired"],
};

/** What a person says in the end. */
export const SIGHT_ANSWERS: Readonly<Record<SightAnswer, string>> = {
  taken: "Take over what was seen",
  kept: "Keep the record as it is",
  retired: "Retire the place",
};

/** A finding as the page shows it, with what was decided of it. */
export function sightRow(finding: SightFinding, verdict: SightVerdict | null): SightRow {
  const { mark, kind, item, device, by } = finding;
  return {
    ...{ mark, kind, by, verdict, answers: ANSWERS[kind] },
    place: item ? itemWords(item) : "",
    href: item?.machineId ? `/machines/${item.machineId}` : null,
    device: device ? deviceWords(device) : "",
    source: device?.source ?? null,
    seenOn: device?.lastOn ?? finding.lastSeenOn,
    firstOn: device?.firstOn ?? null,
    said: saidOf(finding),
  };
}

/** A finding in one line, as a verdict keeps it. */
export function findingWords(finding: SightFinding): string {
  const { place, device, said } = sightRow(finding, null);
  return [[place, device].filter(Boolean).join(" · "), ...said].join("; ");
}

/** How many of what was compared do not agree: unseen, unregistered, elsewhere or different. */
export function disagreement(findings: readonly Pick<SightFinding, "kind">[]): {
  readonly apart: number;
  readonly of: number;
} {
  const apart = findings.filter(({ kind }) => kind !== "agrees" && kind !== "adds").length;
  return { apart, of: findings.length };
}

/** A machine of which lists see nothing where they looked. */
export interface GhostMachine {
  readonly machineId: string;
  readonly label: string;
  /** Places expected on its networks, none seen. */
  readonly places: number;
  /** Last day any list saw one of them; null is never. */
  readonly lastSeenOn: IsoDate | null;
}

/** Machines whose every expected place is unseen; proposed for retirement, never retired by themselves. */
export function ghostMachines(findings: readonly SightFinding[]): GhostMachine[] {
  const seen = new Set(
    findings.flatMap(({ kind, item }) => (kind === "unseen" || !item?.machineId ? [] : [item.machineId])),
  );
  const ghosts = new Map<string, GhostMachine>();
  for (const { kind, item, lastSeenOn } of findings) {
    if (kind !== "unseen" || !item?.machineId || seen.has(item.machineId)) continue;
    const known = ghosts.get(item.machineId);
    const days = [known?.lastSeenOn ?? null, lastSeenOn].filter((one) => one !== null).sort();
    ghosts.set(item.machineId, {
      machineId: item.machineId,
      label: `${item.lineCode} / ${item.machineCode}`,
      places: (known?.places ?? 0) + 1,
      lastSeenOn: days.at(-1) ?? null,
    });
  }
  return [...ghosts.values()];
}

/** What stands over the comparison of a site. */
export function sightingsLead({
  site,
  lists,
  apart,
  compared,
}: {
  readonly site: { readonly code: string } | null;
  readonly lists: readonly unknown[];
  readonly apart: number;
  readonly compared: number;
}): string {
  if (site === null || lists.length === 0)
    return "What lists of the networks saw, held against the register.";
  return `At ${site.code} ${plainNumber(apart)} of ${count(compared, "thing")} seen or on record do not agree.`;
}
