import type { KEY_DEEDS } from "@/lib/schema/accessKey";

export type KeyDeed = (typeof KEY_DEEDS)[number];

/** What a key may do, in words. */
export const KEY_WORDS: Readonly<Record<KeyDeed, string>> = {
  read: "Read",
  "event:write": "Record events",
  "stock:write": "Change stock",
  "register:import": "Hand in and load files",
};

/** The deeds of a key as one line. */
export function keyWords(deeds: readonly string[]): string {
  return deeds.map((deed) => KEY_WORDS[deed as KeyDeed] ?? deed).join(", ");
}

/** Where a key works: codes of its sites, as far as the reader knows them. */
export function keyPlaces(siteIds: readonly string[] | null, codes: ReadonlyMap<string, string>): string {
  if (siteIds === null) return "Wherever its person may";
  return siteIds.map((id) => codes.get(id) ?? "another site").join(", ");
}
