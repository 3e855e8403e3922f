"use client";

import { useEffect, useState, useSyncExternalStore } from "react";
import { isKept, keepCard } from "@/app/_ui/keptCard";
import { Notice } from "@/app/_ui/Notice";

function subscribe(change: () => void): () => void {
  window.addEventListener("online", change);
  window.addEventListener("offline", change);
  return () => {
    window.removeEventListener("online", change);
    window.removeEventListener("offline", change);
  };
}

const WORDS = {
  keeping: "Keeping this card on the device…",
  kept: "Kept on this device: it opens here without a network until you sign out or open another card.",
  not: "Not kept on this device. Print it, or open it over https.",
  /** The server was not reached, whatever the browser says of the network: this is the copy. */
  copy: "",
} as const;

/** Keeps the card on the device, and says so; without a network it says how old the card is. */
export function Kept({ madeAt }: { readonly madeAt: string }) {
  const online = useSyncExternalStore(
    subscribe,
    () => navigator.onLine,
    () => true,
  );
  const [state, setState] = useState<keyof typeof WORDS>("keeping");
  useEffect(() => {
    const keep = async () => {
      if (await keepCard()) setState("kept");
      else setState((await isKept()) ? "copy" : "not");
    };
    if (navigator.onLine) void keep();
  }, []);
  if (!online || state === "copy")
    return (
      <div className="no-print">
        <Notice kind="caution" title="No network">
          This is the card as it was made on {madeAt}. Shelves may have changed since.
        </Notice>
      </div>
    );
  return (
    <p role="status" className="no-print mt-2 text-ink-2 text-sm">
      {WORDS[state]}
    </p>
  );
}
