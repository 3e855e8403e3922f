"use client";

import { useEffect } from "react";

/**
 * Opens what an address or a link on the page points into, and brings it into view.
 *
 * Set it after everything it may open, so that a link wins over what was remembered as closed.
 */
export function OpenTarget() {
  useEffect(() => {
    const byAddress = () => open(window.location.hash);
    byAddress();
    window.addEventListener("hashchange", byAddress);
    document.addEventListener("click", byLink);
    return () => {
      window.removeEventListener("hashchange", byAddress);
      document.removeEventListener("click", byLink);
    };
  }, []);
  return null;
}

/** A link the router follows changes the address without a `hashchange`, and again when it was followed before. */
function byLink({ target }: MouseEvent): void {
  const link = target instanceof Element ? target.closest<HTMLAnchorElement>("a[href*='#']") : null;
  if (link && link.pathname === window.location.pathname) open(link.hash);
}

function open(hash: string): void {
  const target = targetOf(decodeURIComponent(hash.slice(1)));
  if (!target) return;
  const own = target.querySelector<HTMLDetailsElement>(":scope > details[data-fold]");
  if (own) own.open = true;
  for (let at = target.closest("details"); at; at = at.parentElement?.closest("details") ?? null)
    at.open = true;
  target.scrollIntoView({ block: own ? "start" : "center" });
}

/** What stands several times on a page has no id but a `data-anchor`; the first is shown. */
function targetOf(mark: string): Element | null {
  if (mark === "") return null;
  return document.getElementById(mark) ?? document.querySelector(`[data-anchor="${CSS.escape(mark)}"]`);
}
