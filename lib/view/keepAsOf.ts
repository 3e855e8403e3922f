/**
 * Carries the as-of day into a link of this application, so that a look at another day stays there.
 *
 * @param href Path with or without query and fragment; a link that names its own day or leaves the site is kept.
 * @param asOf The day looked at; null when it is today's.
 */
export function keepAsOf(href: string, asOf: string | null): string {
  if (asOf === null || asOf === "" || !href.startsWith("/") || href.startsWith("//")) return href;
  const [, path = "", query = "", fragment = ""] = /^([^?#]*)(\?[^#]*)?(#.*)?$/.exec(href) ?? [];
  const params = new URLSearchParams(query);
  if (!params.has("asOf")) params.set("asOf", asOf);
  return `${path}?${params.toString()}${fragment}`;
}
