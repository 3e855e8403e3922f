import type { ReactNode } from "react";

/** A row of `KeyFigure`s that wraps. */
export function KeyFigures({ children }: { readonly children: ReactNode }) {
  return (
    <div className="mb-6 grid grid-cols-[repeat(auto-fit,minmax(13rem,1fr))] gap-x-8 gap-y-5">{children}</div>
  );
}
