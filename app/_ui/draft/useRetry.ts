"use client";

import { useEffect } from "react";

const RETRY_MS = 15_000;

/** Tries again when the connection is back, and every 15 seconds, as long as something waits. */
export function useRetry(waiting: boolean, send: () => void): void {
  useEffect(() => {
    if (!waiting) return;
    const timer = setInterval(send, RETRY_MS);
    window.addEventListener("online", send);
    return () => {
      clearInterval(timer);
      window.removeEventListener("online", send);
    };
  }, [waiting, send]);
}
