import { PROFILE_FAMILIES, profileFamilyName } from "@/lib/retrofit/profileFamilies";

/** The communication profile families as choices of a form. */
export const profileFamilyChoices = PROFILE_FAMILIES.map(({ number }) => ({
  value: String(number),
  label: profileFamilyName(number),
}));

interface Speaking {
  readonly label: string;
  /** Number of the family the drive of the place speaks; null is not known. */
  readonly drive: number | null;
}

/** What a network's family leaves open beside those of its drives: each drive that names another. */
export function familyFindings(network: number | null, nodes: readonly Speaking[]): string[] {
  if (network === null) return [];
  return nodes
    .filter(({ drive }) => drive !== null && drive !== network)
    .map(({ label, drive }) => `${label}: its drive names CPF ${drive}, the network CPF ${network}.`);
}
