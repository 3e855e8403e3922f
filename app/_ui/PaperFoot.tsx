"use client";

import { useEffect } from "react";

/** Text as a CSS string; what would end the string early is escaped. */
function cssString(text: string): string {
  return `"${text.replace(/["\\\n\r\f]/g, (char) => `\\${(char.codePointAt(0) ?? 0).toString(16)} `)}"`;
}

/**
 * What stands at the foot of every printed page beside its number: the page and the address it was printed from.
 *
 * The margins of paper know no element of the page, only the custom properties of its root; see `print.css`.
 */
export function PaperFoot({ text }: { readonly text: string }) {
  useEffect(() => {
    const { host, pathname } = window.location;
    const root = document.documentElement.style;
    root.setProperty("--paper-foot", cssString(`${text} – ${host}${decodeURI(pathname)}`));
    return () => {
      root.removeProperty("--paper-foot");
    };
  }, [text]);
  return null;
}
