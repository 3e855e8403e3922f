/** What a search finds. */
export type SearchKind = "line" | "part" | "serial" | "bin" | "machine" | "axis" | "position" | "controller";

/** One thing found, and where to go for it. */
export interface SearchHit {
  readonly kind: SearchKind;
  readonly title: string;
  readonly detail: string;
  readonly href: string;
}

const KIND_ORDER: readonly SearchKind[] = [
  "line",
  "part",
  "serial",
  "bin",
  "machine",
  "axis",
  "position",
  "controller",
];

/** The best hits first, each place once: exact before beginning before inside, then by kind and title. */
export function orderHits(
  hits: readonly (SearchHit & { readonly rank: number })[],
  most: number,
): SearchHit[] {
  const place = (hit: SearchHit) => KIND_ORDER.indexOf(hit.kind);
  const sorted = [...hits].sort(
    (a, b) => a.rank - b.rank || place(a) - place(b) || (a.title < b.title ? -1 : a.title > b.title ? 1 : 0),
  );
  const seen = new Set<string>();
  const best: SearchHit[] = [];
  for (const { kind, title, detail, href } of sorted) {
    if (seen.has(href)) continue;
    seen.add(href);
    best.push({ kind, title, detail, href });
  }
  return best.slice(0, most);
}
