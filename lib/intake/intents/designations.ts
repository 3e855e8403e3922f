/**
 * Reference designation of an axis's drive in its machine: letter T for a converter of energy.
 * Class letters after IEC 81346-2, from memory.
 */
export function driveDesignation(axisCode: string): string {
  return `${axisCode}-T1`;
}

/** Reference designation of an axis's motor in its machine: letter M for a drive of motion. */
export function motorDesignation(axisCode: string): string {
  return `${axisCode}-M1`;
}
