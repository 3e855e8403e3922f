import type { Values } from "@/lib/intake/checkRow";
import type { RowProblem } from "@/lib/intake/intents/cells";
import { numberValue } from "@/lib/intake/rowValues";
import { isProfileFamily, PROFILE_FAMILIES } from "@/lib/retrofit/profileFamilies";

/** What is wrong with a number of a communication profile family: one the list of families does not have. */
export function profileFamilyProblems(row: Values, field: string): RowProblem[] {
  const number = numberValue(row, field);
  if (number === null || isProfileFamily(number)) return [];
  const known = PROFILE_FAMILIES.map((family) => family.number).join(", ");
  return [
    {
      field,
      problem: `CPF ${number} is no communication profile family of IEC 61784 on record`,
      remedy: `Use one of ${known}, or leave the cell empty`,
    },
  ];
}
