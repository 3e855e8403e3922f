const MINUTE = 60_000;
const DAY = 86_400_000;

const clocks = new Map<string, Intl.DateTimeFormat>();

function clockOf(zone: string): Intl.DateTimeFormat {
  const known = clocks.get(zone);
  if (known) return known;
  const made = new Intl.DateTimeFormat("en-GB", {
    ...{ timeZone: zone, hourCycle: "h23", year: "numeric", month: "2-digit", day: "2-digit" },
    ...{ hour: "2-digit", minute: "2-digit" },
  });
  clocks.set(zone, made);
  return made;
}

/** What the clock of a zone shows at an instant, "YYYY-MM-DDTHH:MM". */
function shownAt(instant: number, zone: string): string {
  const parts = Object.fromEntries(
    clockOf(zone)
      .formatToParts(instant)
      .map(({ type, value }) => [type, value]),
  );
  return `${parts.year}-${parts.month}-${parts.day}T${parts.hour}:${parts.minute}`;
}

/**
 * The instants, ms since 1970 UTC, at which a site's clock shows a local time "YYYY-MM-DDTHH:MM": one as a rule,
 * two in the hour that the end of summer time repeats, none in the hour its start skips.
 *
 * @param zone IANA name.
 * @throws {RangeError} when the zone does not exist or the time is none.
 */
export function instantsOf(local: string, zone: string): number[] {
  const asUtc = Date.parse(`${local}:00Z`);
  if (Number.isNaN(asUtc)) throw new RangeError(`local time must be YYYY-MM-DDTHH:MM, got ${local}`);
  const offsets = [-DAY, 0, DAY].map((apart) => {
    const instant = asUtc + apart;
    return Date.parse(`${shownAt(instant, zone)}:00Z`) - instant;
  });
  const candidates = [...new Set(offsets.map((offset) => asUtc - offset))];
  return candidates.filter((instant) => shownAt(instant, zone) === local).sort((a, b) => a - b);
}

/**
 * Hours between two local times of one site, by its zone: the night summer time begins is an hour shorter.
 * Of a repeated hour the first is taken for a start and the last for an end; of a skipped one the clock's next hour.
 */
export function hoursBetween(start: string, end: string, zone: string): number {
  const from = firstInstantOf(start, zone);
  const until = instantsOf(end, zone).at(-1) ?? afterGap(end, zone);
  return (until - from) / (60 * MINUTE);
}

/** The first instant, ms since 1970 UTC, at which a zone's clock shows a local time or, where it skips it, the next. */
export function firstInstantOf(local: string, zone: string): number {
  return instantsOf(local, zone)[0] ?? afterGap(local, zone);
}

/** The instant a skipped local time would have been by the clock of before. */
function afterGap(local: string, zone: string): number {
  const asUtc = Date.parse(`${local}:00Z`);
  const before = Date.parse(`${shownAt(asUtc - DAY, zone)}:00Z`) - (asUtc - DAY);
  return asUtc - before;
}
