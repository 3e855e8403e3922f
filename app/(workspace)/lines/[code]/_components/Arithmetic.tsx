import { AsOfLink } from "@/app/_ui/AsOfLink";
import { Derivation } from "@/app/_ui/Derivation";
import { RecordLinks } from "@/app/(workspace)/lines/[code]/_components/RecordLinks";
import { assumptionSetName } from "@/lib/view/assumptionSet";
import { lineArithmetic } from "@/lib/view/lineArithmetic";
import { lineDepth } from "@/lib/view/lineDepth";
import type { LineDossier } from "@/lib/view/lineDossier";
import { writeSteps } from "@/lib/view/lineSteps";
import { hours } from "@/lib/view/time";

interface ArithmeticProps {
  readonly line: LineDossier;
  /** Pool whose figures are opened; else the one that costs most. */
  readonly poolId: string | undefined;
}

/** How the figures of one part on the line are worked out, from records to money. */
export function Arithmetic({ line, poolId }: ArithmeticProps) {
  const chosen = line.drivers.find((driver) => driver.poolId === poolId) ?? line.drivers[0];
  if (!chosen) return <p>No items are recorded on this line, so there is nothing to work out.</p>;
  const steps = lineArithmetic(chosen, {
    costPerHour: line.cost.perHour,
    bufferHours: line.stored.bufferHours === null ? null : Number(line.stored.bufferHours),
    unrecoveredShare: line.unrecoveredShare,
    ...{ fixedCost: line.cost.fixed, costSteps: line.cost.steps },
    lineLoss: line.result.stopLoss?.mean ?? null,
    lineScore: line.result.score,
    assumptions: line.assumptions,
  });
  const assumed = [...line.result.assumed, ...(chosen.pool?.assumed ?? [])];
  return (
    <>
      <nav aria-label="Part whose arithmetic is opened">
        <ul className="flex flex-wrap gap-x-4 gap-y-1">
          {line.drivers.map((driver) => (
            <li key={driver.poolId}>
              <AsOfLink
                href={`/lines/${line.code}?part=${encodeURIComponent(driver.poolId)}#arithmetic`}
                aria-current={driver === chosen ? "true" : undefined}
                className="inline-block py-1 aria-[current]:font-semibold aria-[current]:text-ink"
              >
                {driver.label}
              </AsOfLink>
            </li>
          ))}
        </ul>
      </nav>
      <Derivation
        key={chosen.poolId}
        title={`How the figures of ${chosen.label} on ${line.code} are worked out`}
        open
        steps={writeSteps(steps).map(({ note, ...step }) => ({ ...step, source: note }))}
      >
        <p>
          Shown to four digits, computed with all of them. A stop lasts {hours(chosen.hoursWithSpare)} on
          average with a spare and {hours(chosen.hoursWithoutSpare)} without; records of the class pull both
          from the stated defaults. Computed by {line.engine} on data version {line.dataVersion} with{" "}
          <AsOfLink href="/assumptions">{assumptionSetName(line.assumptionSet)}</AsOfLink>.
        </p>
        {assumed.length === 0 ? null : (
          <ul className="mt-1 list-disc pl-5">
            {assumed.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        )}
      </Derivation>
      <RecordLinks code={line.code} driver={chosen} showsAmounts={line.showsAmounts} />
      <DepthArithmetic line={line} />
    </>
  );
}

/** Figures of the whole line that no single part has. */
function DepthArithmetic({ line }: Pick<ArithmeticProps, "line">) {
  const steps = writeSteps(lineDepth(line));
  if (steps.length === 0) return null;
  return (
    <Derivation
      id="depth"
      open
      title={`How the unknowns and the years ahead of ${line.code} are worked out`}
      steps={steps.map(({ note, ...step }) => ({ ...step, source: note }))}
    />
  );
}
