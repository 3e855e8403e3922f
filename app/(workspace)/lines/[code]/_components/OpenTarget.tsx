"use client";

import { useEffect } from "react";

/** Opens the machine an address points into and brings the place into view. */
export function OpenTarget() {
  useEffect(() => {
    open();
    window.addEventListener("hashchange", open);
    return () => window.removeEventListener("hashchange", open);
  }, []);
  return null;
}

function open(): void {
  const target = targetOf(decodeURIComponent(window.location.hash.slice(1)));
  const machine = target?.closest("details");
  if (!target || !machine) return;
  machine.open = true;
  target.scrollIntoView({ block: "center" });
}

/** Several machines may share a controller, so it is no id; the first of them is shown. */
function targetOf(mark: string): Element | null {
  const controller = /^controller-(.+)$/.exec(mark)?.[1];
  return controller === undefined
    ? document.getElementById(mark)
    : document.querySelector(`[data-controller="${CSS.escape(controller)}"]`);
}
