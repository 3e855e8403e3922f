/** A communication profile family and the parts of IEC 61784 that define profiles of it. */
export interface ProfileFamily {
  readonly number: number;
  readonly parts: readonly ("IEC 61784-1" | "IEC 61784-2")[];
}

/** Part 1: profiles on fieldbuses. Part 2: profiles for real-time networks on ISO/IEC/IEEE 8802-3. */
const PART_1 = [1, 2, 3, 4, 5, 6, 8, 9, 16, 19];
const PART_2 = [2, 3, 4, 6, 8, 10, 11, 12, 13, 14, 15, 16, 17, 18, 20, 21];

/**
 * The communication profile families (CPF) by number; the names networks are sold under are left out.
 *
 * Read off table 1 of IEC 61784-1:2010 and the abstract of its 2014 edition (CPF 19), and off the contents and
 * the abstract of IEC 61784-2:2019, all as shown by their publishers; the standards themselves were not opened.
 * CPF 7 was taken out of the standard. Families of later editions are missing.
 */
export const PROFILE_FAMILIES: readonly ProfileFamily[] = [...new Set([...PART_1, ...PART_2])]
  .sort((a, b) => a - b)
  .map((number) => ({
    number,
    parts: [
      ...(PART_1.includes(number) ? (["IEC 61784-1"] as const) : []),
      ...(PART_2.includes(number) ? (["IEC 61784-2"] as const) : []),
    ],
  }));

/** Whether the number is that of a family in the list. */
export function isProfileFamily(number: number): boolean {
  return PROFILE_FAMILIES.some((family) => family.number === number);
}

/** `CPF 16 (IEC 61784-1, IEC 61784-2)`; a number that is none of the list stands alone. */
export function profileFamilyName(number: number): string {
  const parts = PROFILE_FAMILIES.find((family) => family.number === number)?.parts ?? [];
  return parts.length === 0 ? `CPF ${number}` : `CPF ${number} (${parts.join(", ")})`;
}
