import { CheckboxField } from "@/app/_ui/field/CheckboxField";
import { NumberField } from "@/app/_ui/field/NumberField";
import { SelectField } from "@/app/_ui/field/SelectField";
import { TextareaField } from "@/app/_ui/field/TextareaField";
import { TextField } from "@/app/_ui/field/TextField";
import type { RuleKind } from "@/lib/schema/compatibilityRule";
import { evidenceView } from "@/lib/view/evidence";
import { fieldText, RULE_FIELDS, type RuleField } from "@/lib/view/ruleFields";
import { FIT_NAMES, type RuleVersion } from "@/lib/view/ruleTable";

interface RuleFormFieldsProps {
  readonly kind: RuleKind;
  readonly start: RuleVersion | null;
  readonly problems: Readonly<Record<string, string>>;
}

const GRADES = ["measured", "documented", "inferred", "assumed"] as const;
const fits = Object.entries(FIT_NAMES).map(([value, label]) => ({ value, label }));

/** The fields of a rule: those of its kind, then where it comes from. */
export function RuleFormFields({ kind, start, problems }: RuleFormFieldsProps) {
  return (
    <>
      {start === null ? (
        <TextField label="Code" name="code" required hint="As R8." error={problems.code} />
      ) : null}
      {RULE_FIELDS[kind].map((field) => (
        <TermField
          key={field.name}
          field={field}
          stored={start === null ? "" : fieldText(field, start.terms)}
          error={problems[field.name]}
        />
      ))}
      <TextField
        {...{ label: "Meaning", name: "note", required: true, error: problems.note }}
        defaultValue={start?.note}
      />
      <TextField
        {...{ label: "Source", name: "source", required: true, error: problems.source }}
        hint="A document somebody can open, or that it has no source."
        defaultValue={start?.source}
      />
      <SelectField
        {...{ label: "How well it is known", name: "evidence", required: true, error: problems.evidence }}
        choices={GRADES.map((value) => ({ value, label: evidenceView(value).text }))}
        defaultValue={start?.evidence ?? "assumed"}
      />
      {start === null ? null : (
        <CheckboxField
          label="Retired: judges nothing from this version on"
          name="retired"
          defaultChecked={start.retired}
        />
      )}
    </>
  );
}

interface TermFieldProps {
  readonly field: RuleField;
  readonly stored: string;
  readonly error: string | undefined;
}

function TermField({ field, stored, error }: TermFieldProps) {
  const { name, label, type, hint, unit, optional } = field;
  const shared = { name, label, hint, error, required: !optional, defaultValue: stored };
  if (type === "number") return <NumberField {...shared} {...(unit ? { unit } : {})} />;
  if (type === "fit") return <SelectField {...shared} choices={fits} />;
  return type === "text" ? <TextField {...shared} /> : <TextareaField {...shared} rows={3} />;
}
