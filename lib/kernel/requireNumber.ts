/** Lets a number through that is finite and not below `least` (not at it either when `open`). */
export function requireNumber(
  value: number,
  name: string,
  { least, open = false }: { readonly least: number; readonly open?: boolean },
): number {
  if (!Number.isFinite(value) || value < least || (open && value === least))
    throw new RangeError(`${name} must be finite and ${open ? ">" : ">="} ${least}, got ${value}`);
  return value;
}

/** Lets a number through that lies strictly between 0 and 1. */
export function requireOpenShare(value: number, name: string): number {
  if (!(value > 0 && value < 1)) throw new RangeError(`${name} must lie between 0 and 1, got ${value}`);
  return value;
}

/** Lets a number through that lies in [0, 1]. */
export function requireShare(value: number, name: string): number {
  if (!(value >= 0 && value <= 1)) throw new RangeError(`${name} must be in [0, 1], got ${value}`);
  return value;
}

/** Lets a whole number of at least 0 through. */
export function requireCount(value: number, name: string): number {
  if (!(Number.isSafeInteger(value) && value >= 0))
    throw new RangeError(`${name} must be a whole number >= 0, got ${value}`);
  return value;
}
