import { useState } from "react";
import { Dialog } from "@/app/_ui/Dialog";
import { SelectField } from "@/app/_ui/field/SelectField";
import { RuleForm } from "@/app/(workspace)/rules/_components/RuleForm";
import type { Written } from "@/app/(workspace)/rules/_components/useWritten";
import { RULE_KINDS, type RuleKind } from "@/lib/schema/compatibilityRule";
import { RULE_KIND_NAMES } from "@/lib/view/ruleTable";

/** The button that writes a further rule, and its form: first the kind, then what the kind asks for. */
export function NewRule({ onWritten }: { readonly onWritten: (written: Written) => void }) {
  const [kind, setKind] = useState<RuleKind>(RULE_KINDS[0]);
  return (
    <div className="no-print mt-3">
      <Dialog trigger="New rule" title="New rule" wide>
        {(close) => (
          <div className="grid gap-4">
            <SelectField
              label="Kind"
              name="kind"
              required
              choices={RULE_KINDS.map((value) => ({ value, label: RULE_KIND_NAMES[value] }))}
              value={kind}
              onChange={({ target }) => setKind(target.value as RuleKind)}
            />
            <RuleForm
              key={kind}
              kind={kind}
              start={null}
              seen={0}
              onWritten={(written) => {
                close();
                onWritten(written);
              }}
            />
          </div>
        )}
      </Dialog>
    </div>
  );
}
