"use client";

import { useEffect, useState } from "react";

const EVERY_MS = 30_000;

/** The hour by this device's clock, RFC 3339, every half minute; null until the page runs in a browser. */
export function useDeviceClock(): string | null {
  const [now, setNow] = useState<string | null>(null);
  useEffect(() => {
    const read = () => setNow(new Date().toISOString());
    read();
    const timer = setInterval(read, EVERY_MS);
    return () => clearInterval(timer);
  }, []);
  return now;
}
