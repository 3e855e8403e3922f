/**
 * JSON of a plain value with the keys of every object in order: equal values give equal text, however they were made.
 *
 * Numbers are written the way JavaScript does, shortest digits that read back as the same number.
 *
 * @throws {RangeError} for a number that is not finite, which JSON cannot hold.
 */
export function canonicalJson(value: unknown): string {
  return JSON.stringify(value, (key, inner: unknown) => {
    if (typeof inner === "number" && !Number.isFinite(inner))
      throw new RangeError(`${key || "value"} must be finite to be kept as JSON, got ${inner}`);
    return isRecord(inner) ? Object.fromEntries(Object.entries(inner).sort(byName)) : inner;
  });
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function byName([a]: [string, unknown], [b]: [string, unknown]): number {
  return a < b ? -1 : 1;
}
