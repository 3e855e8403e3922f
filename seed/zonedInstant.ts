/** Minutes a zone is ahead of UTC at an instant. */
function offsetMinutes(at: Date, timeZone: string): number {
  const parts = new Intl.DateTimeFormat("en-GB", {
    timeZone,
    year: "numeric",
    month: "2-digit",
    day: "2-digit",
    hour: "2-digit",
    minute: "2-digit",
    second: "2-digit",
    hourCycle: "h23",
  }).formatToParts(at);
  const part = (type: string) => Number(parts.find((one) => one.type === type)?.value);
  const wall = Date.UTC(
    part("year"),
    part("month") - 1,
    part("day"),
    part("hour"),
    part("minute"),
    part("second"),
  );
  return Math.round((wall - at.getTime()) / 60_000);
}

/**
 * The instant of a wall clock reading at a site, RFC 3339 in UTC.
 *
 * Not meant for the hour a clock is put forward or back, where a reading is missing or double.
 *
 * @param reading `YYYY-MM-DDTHH:MM`. @param timeZone IANA name.
 */
export function zonedInstant(reading: string, timeZone: string): string {
  const asUtc = new Date(`${reading}:00.000Z`);
  const guess = new Date(asUtc.getTime() - offsetMinutes(asUtc, timeZone) * 60_000);
  return new Date(asUtc.getTime() - offsetMinutes(guess, timeZone) * 60_000).toISOString();
}

/** The wall clock reading of an instant at a site, `YYYY-MM-DDTHH:MM`. */
export function wallClock(instant: string, timeZone: string): string {
  const at = new Date(instant);
  return new Date(at.getTime() + offsetMinutes(at, timeZone) * 60_000).toISOString().slice(0, 16);
}
