"use client";

import { Button } from "@/app/_ui/Button";

/** Opens the browser's print, which also makes a PDF. */
export function PrintRequest() {
  return (
    <Button kind="primary" onClick={() => window.print()}>
      Print or keep as PDF
    </Button>
  );
}
