import { useRef, useState } from "react";
import type { AxisPage, ListedAxis } from "@/lib/view/axisList";

interface MoreAxes {
  readonly axes: readonly ListedAxis[];
  readonly state: "more" | "loading" | "failed" | "end";
  /** Fetches the next page, unless one is on its way or the end is reached. */
  readonly loadMore: () => void;
}

/** The pages of a question fetched so far. */
export function useMoreAxes(question: string, first: AxisPage): MoreAxes {
  const [{ axes, next }, setPage] = useState(first);
  const [state, setState] = useState<"idle" | "loading" | "failed">("idle");
  const busy = useRef(false);

  const fetchNext = async (after: string) => {
    setState("loading");
    try {
      const params = new URLSearchParams(question);
      params.set("after", after);
      const response = await fetch(`/api/axes?${params}`);
      if (!response.ok) return setState("failed");
      const page = (await response.json()) as AxisPage;
      setPage((before) => ({ axes: [...before.axes, ...page.axes], next: page.next }));
      setState("idle");
    } catch {
      setState("failed");
    }
  };

  const loadMore = async () => {
    if (busy.current || next === null) return;
    busy.current = true;
    await fetchNext(next);
    busy.current = false;
  };

  const ended = next === null ? "end" : "more";
  return { axes, state: state === "idle" ? ended : state, loadMore };
}
