"use client";

import { Button } from "@/app/_ui/Button";

/** Opens the browser's print. */
export function PrintRequest() {
  return (
    <Button kind="primary" onClick={() => window.print()}>
      Print
    </Button>
  );
}
