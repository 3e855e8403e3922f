import { useId } from "react";
import { describedBy, FieldFrame } from "@/app/_ui/field/FieldFrame";

/** Day and time on the site's clock. */
export function MomentField({ error }: { readonly error?: string | undefined }) {
  const id = useId();
  const hint = "On the clock of the site";
  return (
    <FieldFrame {...{ id, hint, error }} label="When it failed or was taken out" required>
      <input
        {...describedBy(id, { hint, error })}
        name="happenedAt"
        type="datetime-local"
        required
        className="input max-w-64"
      />
    </FieldFrame>
  );
}
