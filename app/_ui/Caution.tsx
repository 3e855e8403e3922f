import { type ReactNode, useId } from "react";

interface CautionProps {
  /** The danger in one line, e.g. `Stored energy: wait, then measure`. */
  readonly title: string;
  readonly children: ReactNode;
}

/** Work that can hurt somebody: what the danger is, what to do first, who may do it. Prints in black. */
export function Caution({ title, children }: CautionProps) {
  const heading = useId();
  return (
    <section aria-labelledby={heading} className="keep-together my-4 border-2 border-ink bg-sheet">
      <div className="work-stripe" aria-hidden="true" />
      <div className="px-4 py-3">
        <p className="label text-ink">Work that can hurt</p>
        <h3 id={heading} className="font-bold text-lg">
          {title}
        </h3>
        <div className="measure mt-1">{children}</div>
      </div>
    </section>
  );
}
