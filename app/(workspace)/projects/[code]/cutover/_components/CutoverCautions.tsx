import { Caution } from "@/app/_ui/Caution";
import { CUTOVER_CAUTIONS, isCutoverCaution } from "@/lib/projects/cutoverCautions";
import type { CutoverPlan } from "@/lib/view/cutover";

/** What no cutover is begun without: all of it where no step carries its own, and always on paper. */
export function CutoverCautions({ plan }: { readonly plan: CutoverPlan }) {
  const carried = plan.steps.some(({ caution }) => isCutoverCaution(caution));
  return (
    <div className={carried ? "hidden print:block" : undefined}>
      {Object.entries(CUTOVER_CAUTIONS).map(([key, { title, text }]) => (
        <Caution key={key} title={title}>
          {text} National law and the rules of the site come first.
        </Caution>
      ))}
    </div>
  );
}
