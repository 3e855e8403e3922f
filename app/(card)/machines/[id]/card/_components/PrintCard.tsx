"use client";

import { Button } from "@/app/_ui/Button";

/** Prints the card: one sheet for the cabinet door. */
export function PrintCard() {
  return (
    <Button kind="primary" onClick={() => window.print()}>
      Print for the cabinet door
    </Button>
  );
}
