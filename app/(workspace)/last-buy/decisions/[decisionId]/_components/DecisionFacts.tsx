import { AsOfLink } from "@/app/_ui/AsOfLink";
import { LinkButton } from "@/app/_ui/LinkButton";
import type { KeptDecision } from "@/lib/data/buyDecision";
import { percent } from "@/lib/view/chance";
import { money } from "@/lib/view/format";
import { caseLabel } from "@/lib/view/lastBuySheet";
import { plainNumber } from "@/lib/view/number";
import { day } from "@/lib/view/time";

/** Who decided what on which figures. */
export function DecisionFacts({ kept: { id, sheet, sheetHash } }: { readonly kept: KeptDecision }) {
  const { document, slip } = sheet;
  const [base] = document.cases;
  const { choice, basis } = document;
  const years = Object.entries(choice.planYears).map(([code, year]) => `${code} ${year}`);
  const rows: [string, string][] = [
    ["Decided by", sheet.names],
    ["Kept", `${day(sheet.keptOn)} by ${sheet.keptBy}`],
    ["Reason", sheet.reason],
    ["Start the order by", day(sheet.orderBy)],
    ["Money", `${money(sheet.money)} at list price`],
    [
      "Likely, low to high",
      base
        ? `${plainNumber(base.quantity)}, ${plainNumber(base.low)} to ${plainNumber(base.high)} units`
        : "",
    ],
    [
      "A year's slip of every retrofit",
      slip ? `${plainNumber(slip.units)} units more, ${money(slip.price)}` : "",
    ],
    ["Worked out for", base ? caseLabel({ ...base, horizonYears: document.terms.horizonYears }) : ""],
    ["Level of service", choice.level === null ? "follows the costs" : percent(choice.level)],
    ["Supposed years of retrofit", years.length === 0 ? "none" : years.join(", ")],
    ["Sites", document.everySite ? `all: ${document.sites.join(", ")}` : document.sites.join(", ")],
    [
      "Figures",
      `of ${day(document.asOf)}, data version ${basis.dataVersion}, engine ${basis.engine}, ${basis.assumptionSet.kind} assumptions version ${basis.assumptionSet.version}`,
    ],
  ];
  return (
    <>
      <dl className="grid max-w-4xl gap-x-6 gap-y-1 sm:grid-cols-[16rem_1fr]">
        {rows.map(([name, value]) => (
          <div key={name} className="contents">
            <dt className="text-ink-2">{name}</dt>
            <dd>{value}</dd>
          </div>
        ))}
        {sheet.supersedes === null ? null : (
          <div className="contents">
            <dt className="text-ink-2">Takes the place of</dt>
            <dd>
              <AsOfLink href={`/last-buy/decisions/${sheet.supersedes}`}>the decision before</AsOfLink>
            </dd>
          </div>
        )}
      </dl>
      <p className="mt-2 break-all text-ink-2 text-sm">{`SHA-256 of the kept text ${sheetHash}`}</p>
      <p className="no-print mt-3 flex flex-wrap gap-2">
        <LinkButton href={`/api/last-buy?decision=${id}&format=xlsx`} download>
          Every step as XLSX
        </LinkButton>
        <LinkButton href={`/api/last-buy?decision=${id}&format=csv`} download>
          Every step as CSV
        </LinkButton>
      </p>
    </>
  );
}
