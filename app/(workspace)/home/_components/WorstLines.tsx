import { AsOfLink } from "@/app/_ui/AsOfLink";
import { SpanBar } from "@/app/_ui/SpanBar";
import { money, moneyRange, moneySpan } from "@/lib/view/format";
import type { HomeLine } from "@/lib/view/home";
import { significant } from "@/lib/view/number";

/** The lines that lose most: loss with its span on one scale, else the score, and what each needs. */
export function WorstLines({ lines }: { readonly lines: readonly HomeLine[] }) {
  if (lines.length === 0) return <p>No line is on record yet.</p>;
  const max = Math.max(0, ...lines.map(({ loss }) => loss?.high ?? 0));
  return (
    <ol className="grid gap-3">
      {lines.map(({ code, name, loss, score, need }) => (
        <li
          key={code}
          className="grid gap-x-6 gap-y-1 border-rule border-b pb-3 md:grid-cols-[14rem_15rem_minmax(0,1fr)]"
        >
          <AsOfLink href={`/lines/${code}`} className="font-semibold">
            {code} {name}
          </AsOfLink>
          <span>
            {loss === null ? (
              `score ${significant(score, 3)} of 100`
            ) : (
              <>
                <strong>{money(loss.mean)}</strong> a year, {moneyRange(loss)}
                <SpanBar {...loss} max={max} text={`${code}: ${moneySpan(loss)} a year`} />
              </>
            )}
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
