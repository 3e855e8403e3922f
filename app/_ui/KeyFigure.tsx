import type { ReactNode } from "react";
import { AsOfLink } from "@/app/_ui/AsOfLink";

interface KeyFigureProps {
  readonly label: string;
  /** Formatted, e.g. from `money`. */
  readonly value: string;
  readonly unit?: string;
  /** The range it may truly have, e.g. `€ 180–790 k`, or a drawn `SpanBar`. */
  readonly span?: ReactNode;
  /** An `EvidenceMark`, or marks. */
  readonly evidence?: ReactNode;
  /** What the figure holds for or when it was taken, e.g. `30 Nov 2026`. */
  readonly date?: string;
  /** Where the figure is derived. */
  readonly href?: string;
  /** Dotted outline: rests on an assumption. */
  readonly assumed?: boolean;
  readonly children?: ReactNode;
}

/** One generous figure with what it needs to be believed. Set several inside `KeyFigures`. */
export function KeyFigure(props: KeyFigureProps) {
  const { label, value, unit, span, evidence, date, href, assumed = false, children } = props;
  return (
    <div className="keep-together border-ink border-t pt-2 pb-1">
      <p className="label">{label}</p>
      <p className="mt-1 flex flex-wrap items-baseline gap-x-2 leading-none">
        <span className={`font-light text-[2.125rem] tracking-[-0.01em] ${assumed ? "assumed" : ""}`}>
          {value}
        </span>
        {unit ? <span className="text-ink-2">{unit}</span> : null}
        {evidence}
      </p>
      {span ? <div className="mt-2 text-[0.9375rem] text-ink-2">{span}</div> : null}
      {children ? <div className="mt-1 text-[0.9375rem]">{children}</div> : null}
      {date || href ? (
        <p className="mt-1.5 flex flex-wrap gap-x-3 text-ink-2 text-sm">
          {date ? <span>{date}</span> : null}
          {href ? (
            <AsOfLink href={href} className="no-print" aria-label={`How ${label} is worked out`}>
              How it is worked out
            </AsOfLink>
          ) : null}
        </p>
      ) : null}
    </div>
  );
}
