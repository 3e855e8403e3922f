import { Dialog } from "@/app/_ui/Dialog";
import { FormMessage } from "@/app/_ui/FormMessage";
import { WhyField } from "@/app/_ui/field/WhyField";
import { SubmitButton } from "@/app/_ui/SubmitButton";
import { useSend } from "@/app/_ui/useSend";
import type { Choose } from "@/app/(workspace)/assumptions/_components/useSetChoice";
import type { AssumptionChoice } from "@/lib/schema/assumptions";
import { assumptionKindName } from "@/lib/view/assumptionSet";

interface ChooseButtonProps {
  readonly choice: AssumptionChoice;
  readonly onChoose: Choose;
}

/** Takes one version of a set into use for the whole group, after it was asked why. */
export function ChooseButton({ choice: { kind, version }, onChoose }: ChooseButtonProps) {
  const name = `${assumptionKindName(kind)}, version ${version}`;
  return (
    <Dialog trigger="Use" triggerLabel={`Use ${name}`} kind="quiet" title={`Use ${name}`}>
      {(close) => <ChooseForm choice={{ kind, version }} onChoose={onChoose} onChosen={close} />}
    </Dialog>
  );
}

function ChooseForm({ choice, onChoose, onChosen }: ChooseButtonProps & { readonly onChosen: () => void }) {
  const { pending, reason, send, errorOf } = useSend({
    save: (data) => onChoose({ ...choice, why: String(data.get("why") ?? "") }),
    onSaved: onChosen,
  });
  return (
    <form noValidate className="grid gap-4" onSubmit={send}>
      <p>Every figure of the group is worked out anew with it, for everybody. It can be taken back.</p>
      <WhyField error={errorOf("why")} />
      <FormMessage kind="problem">{reason}</FormMessage>
      <div>
        <SubmitButton pending={pending}>Take into use</SubmitButton>
      </div>
    </form>
  );
}
