import { partKey } from "@/lib/intake/readPartNumber";
import { compareDevice, type SightDifference } from "@/lib/intake/sightings/compareDevice";
import { type RegisterItem, type SeenDevice, scopeOf } from "@/lib/intake/sightings/device";
import { DeviceMatcher, type Match, type MatchWay } from "@/lib/intake/sightings/matchDevices";
import type { IsoDate } from "@/lib/kernel/isoDate";

/**
 * What holding a list against the register finds.
 *
 * `agrees` · `adds`: it fills what the register leaves open · `differs` · `elsewhere`: the register has its serial number at
 * another place · `unregistered`: seen, not on record · `unseen`: on record, not seen where the list looked.
 */
export type SightKind = "agrees" | "adds" | "differs" | "elsewhere" | "unregistered" | "unseen";

export interface SightFinding {
  readonly kind: SightKind;
  /** What it is about and what both sides said: the same disagreement has the same mark. */
  readonly mark: string;
  readonly device: SeenDevice | null;
  readonly item: RegisterItem | null;
  readonly by: MatchWay | null;
  readonly elsewhere: RegisterItem | null;
  readonly differences: readonly SightDifference[];
  /** Of what is not seen: the last day any list saw it; null is never. */
  readonly lastSeenOn: IsoDate | null;
}

export interface SourceComparison {
  readonly findings: readonly SightFinding[];
  /** Last day each source saw an item, by item id. */
  readonly seen: ReadonlyMap<string, ReadonlyMap<string, IsoDate>>;
  /** Places with a node address no list looked at: nothing can be said of them. */
  readonly notLookedAt: number;
}

interface MatchedDevice {
  readonly device: SeenDevice;
  readonly match: Match | null;
}

const ORDER: readonly SightKind[] = ["elsewhere", "differs", "unregistered", "unseen", "adds", "agrees"];

/**
 * Holds the latest list of every place looked at against the register.
 *
 * Devices only older lists saw tell since when an item is not seen. An item is missing only where a current list looked:
 * on its network, or behind its controller where it has none.
 */
export function compareSources(
  items: readonly RegisterItem[],
  devices: readonly SeenDevice[],
): SourceComparison {
  const matcher = new DeviceMatcher(items);
  const matched = devices.map((device) => ({ device, match: matcher.match(device) }));
  const seen = lastDays(matched);
  const current = currentOf(matched);
  const found = current.map(findingOf);
  const met = new Set(found.flatMap(({ item }) => (item === null ? [] : [item.id])));
  const looked = placesLookedAt(current);
  const expected = items.filter(({ kind, node }) => kind === "place" && node !== null);
  const missing = expected.filter((item) => !met.has(item.id) && looked.has(placeOf(item)));
  const findings = [...found, ...missing.map((item) => unseen(item, seen))];
  return {
    findings: ORDER.flatMap((kind) => findings.filter((one) => one.kind === kind)),
    seen,
    notLookedAt: expected.filter((item) => !looked.has(placeOf(item)) && !met.has(item.id)).length,
  };
}

const placeOf = ({ network, controller }: RegisterItem) => partKey(network ?? controller ?? "");

/** Of each place a source looked at, what its latest list saw. */
function currentOf(matched: readonly MatchedDevice[]): MatchedDevice[] {
  const latest = new Map<string, IsoDate>();
  for (const { device } of matched) {
    const scope = scopeOf(device);
    const before = latest.get(scope);
    if (before === undefined || before < device.lastOn) latest.set(scope, device.lastOn);
  }
  return matched.filter(({ device }) => latest.get(scopeOf(device)) === device.lastOn);
}

function placesLookedAt(current: readonly MatchedDevice[]): ReadonlySet<string> {
  const places = current.flatMap(({ device, match }) => [
    device.network,
    device.network === "" ? device.controller : "",
    match?.by === "address" ? (match.item.network ?? "") : "",
  ]);
  return new Set(places.map(partKey).filter((key) => key !== ""));
}

function lastDays(matched: readonly MatchedDevice[]): Map<string, Map<string, IsoDate>> {
  const days = new Map<string, Map<string, IsoDate>>();
  for (const { device, match } of matched) {
    if (match === null) continue;
    const own = days.get(match.item.id) ?? new Map<string, IsoDate>();
    const before = own.get(device.source);
    if (before === undefined || before < device.lastOn) own.set(device.source, device.lastOn);
    days.set(match.item.id, own);
  }
  return days;
}

function findingOf({ device, match }: MatchedDevice): SightFinding {
  if (match === null)
    return {
      ...{ kind: "unregistered", device, item: null, by: null, elsewhere: null, differences: [] },
      ...{
        mark: markOf("unregistered", deviceKey(device), [device.number, device.serial]),
        lastSeenOn: null,
      },
    };
  const { item, by, elsewhere } = match;
  const differences = compareDevice(item, device);
  const kind = elsewhere
    ? "elsewhere"
    : differences.some(({ verdict }) => verdict === "differs")
      ? "differs"
      : differences.length > 0
        ? "adds"
        : "agrees";
  const said = differences.flatMap(({ field, register, seen }) => [field, register ?? "", seen]);
  const mark = markOf(kind, item.id, [...said, elsewhere?.id ?? ""]);
  return { kind, mark, device, item, by, elsewhere, differences, lastSeenOn: null };
}

function unseen(item: RegisterItem, seen: SourceComparison["seen"]): SightFinding {
  const days = [...(seen.get(item.id)?.values() ?? [])].sort();
  const lastSeenOn = days.at(-1) ?? null;
  return {
    ...{ kind: "unseen", device: null, item, by: null, elsewhere: null, differences: [] },
    ...{ mark: markOf("unseen", item.id, [lastSeenOn ?? ""]), lastSeenOn },
  };
}

function deviceKey({ source, network, controller, slot, address }: SeenDevice): string {
  return [source, network, controller, slot, address].join("|");
}

function markOf(kind: SightKind, subject: string, said: readonly string[]): string {
  return [kind, subject, ...said].join("|");
}
