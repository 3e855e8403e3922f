import { AsOfLink } from "@/app/_ui/AsOfLink";
import { Derivation } from "@/app/_ui/Derivation";
import { EvidenceMark } from "@/app/_ui/EvidenceMark";
import { Fold } from "@/app/_ui/Fold";
import { KeyFigure } from "@/app/_ui/KeyFigure";
import { KeyFigures } from "@/app/_ui/KeyFigures";
import { SpanBar } from "@/app/_ui/SpanBar";
import { Pooling } from "@/app/(workspace)/parts/[id]/_components/Pooling";
import { RateLevels } from "@/app/(workspace)/parts/[id]/_components/RateLevels";
import { Trend } from "@/app/(workspace)/parts/[id]/_components/Trend";
import { consumptionRate } from "@/lib/reliability/rate";
import type { Evidence, Span } from "@/lib/risk/evaluation";
import { percent } from "@/lib/view/chance";
import { evidenceMark } from "@/lib/view/evidence";
import { count, plainNumber, significant } from "@/lib/view/number";
import type { PartDossier, PartPool } from "@/lib/view/partDossier";
import { eventRowsHref } from "@/lib/view/partEvent";
import type { PartExperience } from "@/lib/view/partExperience";
import { consumptionSteps, rateSteps, rateText, returnedShare, weightText } from "@/lib/view/partRates";

interface RatesProps {
  readonly part: PartDossier;
  readonly experience: PartExperience;
}

/** Removals, failures and consumption side by side, and what each is made of, down to the rows. */
export function Rates({ part, experience }: RatesProps) {
  const { pool } = part;
  if (pool === null) return null;
  return (
    <Fold
      page="part"
      title="Rates"
      id="rates"
      figure={`${significant(pool.removal.mean, 2)} removals and ${significant(pool.failure.mean, 2)} failures per unit-year`}
      lead="Three rates that are never mixed: removals draw on the spares, failures stop the line, and what does not come back usable empties the shelf."
    >
      <ThreeRates part={part} pool={pool} />
      <RateArithmetic part={part} pool={pool} />
      <RateLevels part={part} experience={experience} />
      <Pooling part={part} experience={experience} />
      <Trend part={part} experience={experience} />
    </Fold>
  );
}

interface PoolProps {
  readonly part: PartDossier;
  readonly pool: PartPool;
}

function ThreeRates({ part, pool }: PoolProps) {
  const { removal, failure } = pool;
  const { share, assumed } = returnedShare(part.repairYield);
  const consumption = consumptionRate(removal, share);
  const max = Math.max(removal.high, failure.high);
  return (
    <KeyFigures>
      <KeyFigure {...rateFigure("Removal rate", removal, { max, evidence: "inferred" })}>
        Drives the demand for spares. Counted{" "}
        <AsOfLink href={eventRowsHref(part.id, "removals")}>{count(removal.events, "removal")}</AsOfLink> in{" "}
        <a href="#where-used">{plainNumber(removal.unitYears)} unit-years</a>. {weightText(removal)}
      </KeyFigure>
      <KeyFigure {...rateFigure("Failure rate", failure, { max, evidence: "inferred" })}>
        Drives the stops. Counted{" "}
        <AsOfLink href={eventRowsHref(part.id, "failures")}>{count(failure.events, "failure")}</AsOfLink> in{" "}
        <a href="#where-used">{plainNumber(failure.unitYears)} unit-years</a>. {weightText(failure)}
      </KeyFigure>
      <KeyFigure
        {...rateFigure("Consumption rate", consumption, { max, evidence: assumed ? "assumed" : "inferred" })}
        assumed={assumed}
      >
        Drives the run-out once nobody sells it. Removals less the {percent(share)} that come back usable
        {assumed
          ? ": no repair yield is on record, so none is taken to."
          : ", by the repair yield on record."}
      </KeyFigure>
    </KeyFigures>
  );
}

interface Shown {
  readonly max: number;
  readonly evidence: Evidence;
}

function rateFigure(label: string, { mean, low, high }: Span, { max, evidence }: Shown) {
  const words = `${significant(low, 2)} to ${significant(high, 2)}`;
  return {
    ...{ label, value: significant(mean, 2), unit: "per unit-year" },
    evidence: <EvidenceMark {...evidenceMark(evidence)} />,
    span: (
      <>
        <SpanBar {...{ low, mean, high, max }} text={`${label}: ${rateText({ mean, low, high })}`} /> {words}
      </>
    ),
  };
}

function RateArithmetic({ part, pool }: PoolProps) {
  const rows = [
    ["removal rate", rateSteps(pool.removal, "Removals")],
    ["failure rate", rateSteps(pool.failure, "Failures")],
    ["consumption rate", consumptionSteps(pool.removal, returnedShare(part.repairYield))],
  ] as const;
  return (
    <>
      {rows.map(([name, steps]) => (
        <Derivation key={name} title={`How the ${name} is worked out`} steps={steps} />
      ))}
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
      <p className="measure text-ink-2 text-sm">
        Gamma prior from the family, at the weight of 100 unit-years at most, and the part&apos;s own events
        of five years. Events of one common cause at one site count once. Each range holds the true rate with
        a chance of 90 % when the model holds; that of the consumption takes the share that comes back as
        certain.
      </p>
    </>
  );
}
