"use client";

import { type RefObject, useEffect } from "react";

/**
 * Leaves a folded part as this person left it on this device, on every page of the kind.
 *
 * Only what a person does is remembered, not what a link opened.
 */
export function useFoldMemory(fold: RefObject<HTMLDetailsElement | null>, page: string, id: string): void {
  useEffect(() => {
    const details = fold.current;
    const key = `ebbline fold ${page} ${id}`;
    const kept = localStorage.getItem(key);
    if (!details) return;
    if (kept !== null) details.open = kept === "open";
    // The click, by mouse or key, comes before the change.
    const remember = ({ target }: MouseEvent) => {
      const summary = target instanceof Element ? target.closest("summary") : null;
      if (summary?.parentElement === details) localStorage.setItem(key, details.open ? "closed" : "open");
    };
    details.addEventListener("click", remember);
    return () => details.removeEventListener("click", remember);
  }, [fold, page, id]);
}
