import { type KeyboardEvent, type RefObject, useEffect, useRef } from "react";

const STEPS: Readonly<Record<string, number>> = { ArrowDown: 1, ArrowUp: -1, PageDown: 10, PageUp: -10 };

function targetIndex(key: string, index: number, last: number): number | null {
  if (key === "Home") return 0;
  if (key === "End") return last;
  const step = STEPS[key];
  return step === undefined ? null : Math.min(last, Math.max(0, index + step));
}

interface RowWalk {
  readonly body: RefObject<HTMLTableSectionElement | null>;
  readonly last: number;
  /** Brings a row into sight where not all rows are drawn; null where the browser does it. */
  readonly scrollTo: ((index: number) => void) | null;
}

/**
 * Moves the focus from row link to row link by arrow, page, home and end keys.
 *
 * A row far away is drawn only after scrolling; it is remembered and takes the focus when it appears.
 */
export function useRowWalk({ body, last, scrollTo }: RowWalk) {
  const wanted = useRef<number | null>(null);

  const focusWanted = () => {
    const selector = `tr[data-index="${wanted.current}"] [data-row-link]`;
    const link = wanted.current === null ? null : body.current?.querySelector<HTMLElement>(selector);
    if (!link) return;
    wanted.current = null;
    link.focus({ preventScroll: scrollTo !== null });
  };
  useEffect(focusWanted);

  return (event: KeyboardEvent<HTMLElement>) => {
    const row = (event.target as HTMLElement).closest<HTMLElement>("[data-row-link]")?.closest("tr");
    if (!row) return;
    const to = targetIndex(event.key, wanted.current ?? Number(row.dataset.index), last);
    if (to === null) return;
    event.preventDefault();
    wanted.current = to;
    scrollTo?.(to);
    focusWanted();
  };
}
