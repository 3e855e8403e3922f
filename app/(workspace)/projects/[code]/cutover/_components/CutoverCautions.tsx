import { Caution } from "@/app/_ui/Caution";
import { CUTOVER_CAUTIONS, isCutoverCaution } from "@/lib/projects/cutoverCautions";
import type { CutoverPlan } from "@/lib/view/cutover";

/** The cautions of the steps at hand, each once; of all where the plan names none. */
export function CutoverCautions({ plan }: { readonly plan: CutoverPlan }) {
  const named = [...new Set(plan.steps.map(({ caution }) => caution))].filter(isCutoverCaution);
  const keys = named.length > 0 ? named : Object.keys(CUTOVER_CAUTIONS).filter(isCutoverCaution);
  return keys.map((key) => (
    <Caution key={key} title={CUTOVER_CAUTIONS[key].title}>
      {CUTOVER_CAUTIONS[key].text} National law and the rules of the site come first.
    </Caution>
  ));
}
