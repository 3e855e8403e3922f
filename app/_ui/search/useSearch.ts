import { useEffect, useState } from "react";

/** One hit: what it is, its name, a line about it, where it leads. */
export interface SearchHit {
  readonly kind: string;
  readonly title: string;
  readonly detail: string;
  readonly href: string;
}

export type SearchAnswer =
  | { readonly state: "idle" | "searching" | "failed" }
  | { readonly state: "found"; readonly hits: readonly SearchHit[] };

const PAUSE_MS = 150;
const SHORTEST = 2;

/** Asks `/api/search?q=`, for the day the page looks at, once the typing pauses; an older answer never overtakes a newer one. */
export function useSearch(query: string): SearchAnswer {
  const [answer, setAnswer] = useState<SearchAnswer>({ state: "idle" });
  const text = query.trim();
  useEffect(() => {
    if (text.length < SHORTEST) {
      setAnswer({ state: "idle" });
      return;
    }
    setAnswer({ state: "searching" });
    const stop = new AbortController();
    const ask = async () => {
      try {
        const response = await fetch(searchAddress(text), { signal: stop.signal });
        if (!response.ok) return setAnswer({ state: "failed" });
        const { results } = (await response.json()) as { readonly results: readonly SearchHit[] };
        setAnswer({ state: "found", hits: results });
      } catch {
        if (!stop.signal.aborted) setAnswer({ state: "failed" });
      }
    };
    const timer = setTimeout(ask, PAUSE_MS);
    return () => {
      clearTimeout(timer);
      stop.abort();
    };
  }, [text]);
  return answer;
}

function searchAddress(text: string): string {
  const asked = new URLSearchParams({ q: text });
  const asOf = new URLSearchParams(window.location.search).get("asOf");
  if (asOf !== null) asked.set("asOf", asOf);
  return `/api/search?${asked}`;
}
