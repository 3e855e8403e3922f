import { EvidenceMark } from "@/app/_ui/EvidenceMark";
import { KeyFigure } from "@/app/_ui/KeyFigure";
import { KeyFigures } from "@/app/_ui/KeyFigures";
import { Notice } from "@/app/_ui/Notice";
import { evidenceMark } from "@/lib/view/evidence";
import { exactMoney } from "@/lib/view/format";
import type { ProjectFigures, ProjectFile } from "@/lib/view/project";
import { localMoney } from "@/lib/view/projectMoney";
import { inEuros, type RateTable } from "@/lib/view/projectRates";
import { moneyWarnings } from "@/lib/view/projectWarnings";
import { day } from "@/lib/view/time";

interface MoneyHeadProps {
  readonly project: ProjectFile;
  readonly figures: ProjectFigures;
  readonly rates: RateTable;
  readonly asOf: string;
}

/** Budget, what is bound of it and what it ends at, with the budget in euros at the stated rates. */
export function MoneyHead({ project, figures, rates, asOf }: MoneyHeadProps) {
  const { currency, budgetRate } = project;
  const { ledger, budget } = figures;
  const { total, contingencyLeft, unstated } = ledger;
  const amount = (text: string | null) => localMoney(text === null ? null : Number(text), currency);
  const documented = <EvidenceMark {...evidenceMark("documented")} />;
  const turned = inEuros(budget, { table: rates, currency, asOf });
  const warnings = moneyWarnings(project, figures);
  return (
    <>
      <KeyFigures>
        <KeyFigure
          label="Budget"
          value={amount(budget)}
          span={`${exactMoney(total.original, currency)} at the start, ${exactMoney(total.changed, currency)} by approved changes`}
          evidence={documented}
        />
        <KeyFigure
          label="Paid"
          value={amount(total.paid)}
          span={`${exactMoney(total.bound, currency)} with what is ordered and not yet paid`}
          evidence={documented}
        />
        <KeyFigure
          label="In the end, as stated by class"
          value={amount(total.forecast)}
          span={
            unstated.length > 0
              ? "not known while a class says nothing of its rest"
              : "paid, ordered, and still to order"
          }
        />
        <KeyFigure
          label="Contingency left"
          value={amount(contingencyLeft)}
          span={contingencyLeft === null ? "the budget is not split by class" : undefined}
        />
      </KeyFigures>
      {turned.length > 0 ? (
        <p className="measure">
          {"The budget is "}
          {turned.map(({ label, amount: text, rate, source }, i) => (
            <span key={label}>
              {i > 0 ? "; " : ""}
              <span className="whitespace-nowrap font-semibold">{text}</span>{" "}
              {`${label} (${rate}; source: ${source})`}
            </span>
          ))}
          {"."}
          {budgetRate
            ? ` It was made at ${budgetRate.perEuro} ${currency} for one euro, the budget rate from ${day(budgetRate.on)}.`
            : ""}
        </p>
      ) : null}
      {warnings.length > 0 ? (
        <Notice kind="caution" title="Look at this">
          <ul className="list-disc pl-5">
            {warnings.map((text) => (
              <li key={text}>{text}</li>
            ))}
          </ul>
        </Notice>
      ) : null}
    </>
  );
}
