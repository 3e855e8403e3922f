import { AsOfLink } from "@/app/_ui/AsOfLink";
import { SpanBar } from "@/app/_ui/SpanBar";
import { StageBadge } from "@/app/_ui/StageBadge";
import { cellText } from "@/lib/view/reportCell";
import type { ReportCell } from "@/lib/view/reportDocument";
import { stageBadge } from "@/lib/view/stage";

interface SheetCellProps {
  readonly cell: ReportCell;
  /** Page the value is shown on with its rows and steps. */
  readonly href: string;
  /** Upper end of the scale that the spans of the table share, EUR. */
  readonly scale: number;
}

/** One value of a report, drawn as its kind asks for, leading to its page. */
export function SheetCell({ cell, href, scale }: SheetCellProps) {
  if (cell.kind === "stage" && cell.stage !== null) return <StageBadge {...stageBadge(cell.stage)} />;
  const text = cellText(cell);
  const link = (
    <AsOfLink href={href} className="report-link">
      {text}
    </AsOfLink>
  );
  if (cell.kind !== "span" || cell.span === null) return link;
  return (
    <span className="report-span">
      <SpanBar {...cell.span} max={scale} text={text} />
      {link}
    </span>
  );
}
