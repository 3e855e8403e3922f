import { Derivation } from "@/app/_ui/Derivation";
import { Section } from "@/app/_ui/Section";
import type { RateResult } from "@/lib/risk/evaluation";
import { plainNumber, significant } from "@/lib/view/number";
import type { PartDossier } from "@/lib/view/partDossier";
import { countedText, rateSteps, rateText } from "@/lib/view/partRates";

interface RateProps {
  readonly name: string;
  readonly events: string;
  readonly rate: RateResult;
}

function Rate({ name, events, rate }: RateProps) {
  return (
    <>
      <p>
        <span className="font-semibold">{name}:</span> {rateText(rate)}; counted {countedText(rate)}.
      </p>
      <Derivation title={`How the ${name.toLowerCase()} is worked out`} steps={rateSteps(rate, events)}>
        <p>
          Gamma prior from the family, at the weight of 100 unit-years at most, and the part&apos;s own events
          of five years. Events of one common cause count once. The range holds the true rate with a chance of
          90 % when the model holds.
        </p>
      </Derivation>
    </>
  );
}

/** How often the part is removed and fails, with what was counted and the arithmetic. */
export function Rates({ part: { pool } }: { readonly part: PartDossier }) {
  if (pool === null) return null;
  return (
    <Section
      title="How often it is removed and fails"
      id="rates"
      lead="Removals draw on the spares, failures stop the line; a removal with no fault found is no failure."
    >
      <Rate name="Removal rate" events="Removals" rate={pool.removal} />
      <Rate name="Failure rate" events="Failures" rate={pool.failure} />
      <Derivation
        title="How the removals a year are worked out"
        steps={[
          { label: "Units installed in the group", value: plainNumber(pool.installed) },
          {
            label: "Removals a year",
            formula: `${plainNumber(pool.installed)} × ${significant(pool.removal.mean, 3)}`,
            value: significant(pool.removalsPerYear, 3),
            unit: "a year",
          },
        ]}
      />
    </Section>
  );
}
