"use client";

import { useEffect } from "react";

/** Lets the foot of every printed page say that it looks back; see `print.css`. */
export function PaperKnown({ text }: { readonly text: string | null }) {
  useEffect(() => {
    const root = document.documentElement.style;
    if (text !== null) root.setProperty("--paper-known", JSON.stringify(`, ${text}`));
    return () => {
      root.removeProperty("--paper-known");
    };
  }, [text]);
  return null;
}
