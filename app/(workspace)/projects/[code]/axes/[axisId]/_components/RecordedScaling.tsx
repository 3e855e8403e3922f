import { EvidenceMark } from "@/app/_ui/EvidenceMark";
import { Section } from "@/app/_ui/Section";
import type { FactGroup } from "@/lib/schema/axisFacts";
import { cableWords, endsWords, homingWords, knownWords, wayWords } from "@/lib/view/axisFacts";
import type { AxisFile } from "@/lib/view/axisRecord";
import { evidenceMark } from "@/lib/view/evidence";
import { exactNumber } from "@/lib/view/number";

const known = (value: number | null) => (value === null ? "not known" : exactNumber(value));

/** A fact with how well it is known; one that is not known stands alone. */
function knownTo({ facts }: AxisFile, group: FactGroup, words: string): string {
  const known = knownWords(facts, group);
  return known === null ? words : `${words} (${known})`;
}

/** What the register holds of the axis's scaling, with the arithmetic; a retrofit loses it from the controller. */
export function RecordedScaling({ axis }: { readonly axis: AxisFile }) {
  const { countsPerRev, motorRevs, loadRevs, unitsPerLoadRev } = axis.scaling;
  const unit = axis.travelUnit ?? "unit";
  return (
    <Section
      title="Scaling, travel and homing as recorded"
      lead="The controller loses it with the old drive; it is declared again from here and checked."
    >
      <dl className="grid gap-x-8 gap-y-2 sm:grid-cols-2 print:grid-cols-4 print:gap-y-1">
        <Fact term="Feedback" value={axis.feedback ?? "not known"} />
        <Fact term="Counts of one motor revolution" value={known(countsPerRev)} />
        <Fact term="Gearing, motor to load revolutions" value={`${known(motorRevs)} : ${known(loadRevs)}`} />
        <Fact term={`Travel of one load revolution (${unit})`} value={known(unitsPerLoadRev)} />
        <Fact
          term={`Counts per ${unit}`}
          value={
            axis.countsPerUnit === null
              ? "not known"
              : `${known(countsPerRev)} × ${known(motorRevs)} ÷ (${known(loadRevs)} × ${known(unitsPerLoadRev)}) = ${exactNumber(axis.countsPerUnit)}`
          }
        />
        <Fact term="Travel" value={knownTo(axis, "travel", wayWords(axis.facts))} />
        <Fact term="Hardware ends" value={endsWords(axis.facts, "hard")} />
        <Fact term="Software ends" value={endsWords(axis.facts, "soft")} />
        <Fact term="Homing" value={knownTo(axis, "homing", homingWords(axis.facts))} />
        <Fact term="Power cable" value={knownTo(axis, "powerCable", cableWords(axis.facts, "powerCable"))} />
        <Fact
          term="Feedback cable"
          value={knownTo(axis, "feedbackCable", cableWords(axis.facts, "feedbackCable"))}
        />
        <div>
          <dt className="label">How well it is known</dt>
          <dd>
            <EvidenceMark {...evidenceMark(axis.evidence)} long />
          </dd>
        </div>
      </dl>
    </Section>
  );
}

function Fact({ term, value }: { readonly term: string; readonly value: string }) {
  return (
    <div>
      <dt className="label">{term}</dt>
      <dd className="tabular-nums">{value}</dd>
    </div>
  );
}
