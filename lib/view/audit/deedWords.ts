import type { DeedArea } from "@/lib/view/audit/deedArea";
import { recordDeeds } from "@/lib/view/audit/recordDeeds";
import { workDeeds } from "@/lib/view/audit/workDeeds";

/** What was done, in words, by area and deed as the audit keeps them. */
export const AREAS: Readonly<Record<string, DeedArea>> = { ...recordDeeds, ...workDeeds };

/** What was done, in words; a deed without words of its own is named by its area. */
export function deedWords(deed: string): string {
  const [area = "", what = ""] = deed.split(/:(.*)/s);
  const known = AREAS[area];
  if (known === undefined) return `Changed something (${deed})`;
  return known.deeds[what] ?? `${known.title}: ${what.replaceAll(/[:-]/g, " ")}`;
}
