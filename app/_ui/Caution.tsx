import { type ReactNode, useId } from "react";

interface CautionProps {
  /** The danger in one line, e.g. `Stored energy: wait, then measure`. */
  readonly title: string;
  /** Of its heading: 2 where it stands by itself under the page's title. */
  readonly level?: 2 | 3;
  readonly children: ReactNode;
}

/** Work that can hurt somebody: what the danger is, what to do first, who may do it. Prints in black. */
export function Caution({ title, level = 3, children }: CautionProps) {
  const heading = useId();
  const Heading = `h${level}` as const;
  return (
    <section aria-labelledby={heading} className="keep-together my-4 border-2 border-ink bg-sheet">
      <div className="work-stripe" aria-hidden="true" />
      <div className="px-4 py-3">
        <p className="label text-ink">Work that can hurt</p>
        <Heading id={heading} className="font-bold text-lg">
          {title}
        </Heading>
        <div className="measure mt-1">{children}</div>
      </div>
    </section>
  );
}
