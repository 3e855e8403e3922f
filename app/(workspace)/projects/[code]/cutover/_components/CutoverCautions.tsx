import { Caution } from "@/app/_ui/Caution";
import { CUTOVER_CAUTIONS, isCutoverCaution } from "@/lib/projects/cutoverCautions";
import type { CutoverPlan } from "@/lib/view/cutover";

/** What no cutover is begun without, where no step carries its own. */
export function CutoverCautions({ plan }: { readonly plan: CutoverPlan }) {
  if (plan.steps.some(({ caution }) => isCutoverCaution(caution))) return null;
  return Object.entries(CUTOVER_CAUTIONS).map(([key, { title, text }]) => (
    <Caution key={key} title={title}>
      <p>{text}</p>
      <p>National law and the rules of the site come first.</p>
    </Caution>
  ));
}
