import { useTransition } from "react";
import { Button } from "@/app/_ui/Button";
import type { AssumptionChoice } from "@/lib/schema/assumptions";
import { assumptionKindName } from "@/lib/view/assumptionSet";

interface ChooseButtonProps {
  readonly choice: AssumptionChoice;
  readonly onChoose: (choice: AssumptionChoice) => Promise<void>;
}

/** Takes one version of a set into use for the whole group. */
export function ChooseButton({ choice, onChoose }: ChooseButtonProps) {
  const [pending, start] = useTransition();
  const { kind, version } = choice;
  return (
    <Button
      kind="quiet"
      aria-disabled={pending}
      aria-label={`Use ${assumptionKindName(kind)}, version ${version}`}
      onClick={() => {
        if (!pending) start(() => onChoose({ kind, version }));
      }}
    >
      {pending ? "Taking into use…" : "Use"}
    </Button>
  );
}
