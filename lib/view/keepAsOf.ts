import { KNOWN } from "@/lib/view/knownAt";

/**
 * Carries the as-of day into a link of this application, so that a look at another day stays there.
 *
 * @param href Path with or without query and fragment; a link that names its own day or leaves the site is kept.
 * @param asOf The day looked at; null when it is today's.
 * @param known The instant looked back to, as the address says it; null when nobody looks back.
 */
export function keepAsOf(href: string, asOf: string | null, known: string | null = null): string {
  if ((!asOf && !known) || !href.startsWith("/") || href.startsWith("//")) return href;
  const [, path = "", query = "", fragment = ""] = /^([^?#]*)(\?[^#]*)?(#.*)?$/.exec(href) ?? [];
  const params = new URLSearchParams(query);
  if (asOf && !params.has("asOf")) params.set("asOf", asOf);
  if (known && !params.has(KNOWN)) params.set(KNOWN, known);
  return `${path}?${params.toString()}${fragment}`;
}
