import { Dialog } from "@/app/_ui/Dialog";
import { RuleForm } from "@/app/(workspace)/rules/_components/RuleForm";
import type { Written } from "@/app/(workspace)/rules/_components/useWritten";
import { RULE_KIND_NAMES, type RuleVersion } from "@/lib/view/ruleTable";

interface ChangeRuleProps {
  /** The version the form begins with. */
  readonly rule: RuleVersion;
  /** The newest version of the code. */
  readonly seen: number;
  /** Text of the button. */
  readonly trigger?: string;
  readonly onWritten: (written: Written) => void;
}

/** The button that changes a rule, and its form. */
export function ChangeRule({ rule, seen, trigger = `Change ${rule.code}`, onWritten }: ChangeRuleProps) {
  return (
    <Dialog trigger={trigger} kind="quiet" title={`${rule.code}: ${RULE_KIND_NAMES[rule.kind]}`} wide>
      {(close) => (
        <RuleForm
          kind={rule.kind}
          start={rule}
          seen={seen}
          onWritten={(written) => {
            close();
            onWritten(written);
          }}
        />
      )}
    </Dialog>
  );
}
