import { AsOfLink } from "@/app/_ui/AsOfLink";
import { SpanBar } from "@/app/_ui/SpanBar";
import { money, moneyRange, moneySpan } from "@/lib/view/format";
import type { HomeLine } from "@/lib/view/home";

/** The lines that lose most: loss with its span on one scale, and what each needs. */
export function WorstLines({ lines }: { readonly lines: readonly HomeLine[] }) {
  if (lines.length === 0) return <p>No line has a cost per hour yet.</p>;
  const max = Math.max(...lines.map(({ loss }) => loss.high));
  return (
    <ol className="grid gap-3">
      {lines.map(({ code, name, loss, need }) => (
        <li
          key={code}
          className="grid gap-x-6 gap-y-1 border-rule border-b pb-3 md:grid-cols-[14rem_15rem_minmax(0,1fr)]"
        >
          <AsOfLink href={`/lines/${code}`} className="font-semibold">
            {code} {name}
          </AsOfLink>
          <span>
            <strong>{money(loss.mean)}</strong> a year, {moneyRange(loss)}
            <SpanBar {...loss} max={max} text={`${code}: ${moneySpan(loss)} a year`} />
          </span>
          <span>
            <span className="label">Needs</span>{" "}
            {need.href === null ? need.text : <AsOfLink href={need.href}>{need.text}</AsOfLink>}
          </span>
        </li>
      ))}
    </ol>
  );
}
