import type { ReactNode } from "react";
import { PaperFoot } from "@/app/_ui/PaperFoot";
import { day } from "@/lib/view/time";

interface PageHeaderProps {
  readonly title: string;
  /** One sentence with the page's main number, unit and meaning. */
  readonly lead?: ReactNode;
  /** The day the page looks at, `YYYY-MM-DD`. */
  readonly asOf?: string;
  /** Small text above the title, e.g. breadcrumbs. */
  readonly above?: ReactNode;
  /** Buttons and links of the page. */
  readonly actions?: ReactNode;
}

/** Head of a page: title, lead sentence, as-of day and actions under a double rule. */
export function PageHeader({ title, lead, asOf, above, actions }: PageHeaderProps) {
  return (
    <header className="mb-6">
      <PaperFoot text={asOf ? `${title}, as of ${day(asOf)}` : title} />
      {above ? <div className="mb-2 text-sm">{above}</div> : null}
      <div className="flex flex-wrap items-end justify-between gap-x-8 gap-y-3 pb-3">
        <h1 className="font-semibold text-[1.75rem] tracking-[-0.012em] sm:text-[2rem]">{title}</h1>
        {actions ? <div className="no-print flex flex-wrap gap-2">{actions}</div> : null}
      </div>
      <div className="double-rule flex flex-wrap items-baseline justify-between gap-x-8 gap-y-1 pt-3">
        {lead ? <p className="measure text-[1.0625rem] text-ink-2">{lead}</p> : <span />}
        {asOf ? (
          <p className="whitespace-nowrap text-sm">
            <span className="label">As of</span> <time dateTime={asOf}>{day(asOf)}</time>
          </p>
        ) : null}
      </div>
    </header>
  );
}
