/** The rows under each key, in their order. */
export function gathered<K, T>(rows: readonly T[], keyOf: (row: T) => K): ReadonlyMap<K, readonly T[]> {
  const found = new Map<K, T[]>();
  for (const row of rows) {
    const key = keyOf(row);
    const own = found.get(key);
    if (own) own.push(row);
    else found.set(key, [row]);
  }
  return found;
}
