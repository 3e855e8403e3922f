/** Hardware letter and level of a unit, e.g. C3; level null is the letter alone. */
interface Revision {
  readonly letter: string;
  readonly level: number | null;
}

function readRevision(text: string): Revision | null {
  const [, letter, level] = /^([A-Z])\s*(\d{1,3})?$/i.exec(text.trim()) ?? [];
  if (letter === undefined) return null;
  return { letter: letter.toUpperCase(), level: level === undefined ? null : Number(level) };
}

/**
 * Says whether a unit is of a hardware revision or a later one; letters first, then levels.
 *
 * Levels count up within a letter (common practice, no source).
 *
 * @param revision As on the plate; null is not known.
 * @param lowest Letter (every level of it) or letter and level.
 * @returns null when either cannot be read, or the unit's level is needed and not known.
 */
export function isRevisionFrom(revision: string | null, lowest: string): boolean | null {
  const [own, least] = [revision === null ? null : readRevision(revision), readRevision(lowest)];
  if (own === null || least === null) return null;
  if (own.letter !== least.letter) return own.letter > least.letter;
  if (least.level === null) return true;
  return own.level === null ? null : own.level >= least.level;
}
