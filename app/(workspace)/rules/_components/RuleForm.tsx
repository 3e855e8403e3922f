import { type FormEvent, useState, useTransition } from "react";
import { FormMessage } from "@/app/_ui/FormMessage";
import { SubmitButton } from "@/app/_ui/SubmitButton";
import { EffectList } from "@/app/(workspace)/rules/_components/EffectList";
import { RuleFormFields } from "@/app/(workspace)/rules/_components/RuleFormFields";
import type { Written } from "@/app/(workspace)/rules/_components/useWritten";
import { seeEffect, writeRule } from "@/app/(workspace)/rules/actions";
import type { Refusal } from "@/lib/access/action";
import type { RuleEffect } from "@/lib/data/ruleEffect";
import type { ChangedRule, RuleKind } from "@/lib/schema/compatibilityRule";
import { termsOf } from "@/lib/view/ruleFields";
import type { RuleVersion } from "@/lib/view/ruleTable";

interface RuleFormProps {
  readonly kind: RuleKind;
  /** Version the form begins with; null is a new rule. */
  readonly start: RuleVersion | null;
  /** Newest version of the code; 0 is none. */
  readonly seen: number;
  readonly onWritten: (written: Written) => void;
}

/** What a rule asks for; what it changes is shown before it can be written. */
export function RuleForm({ kind, start, seen, onWritten }: RuleFormProps) {
  const [refusal, setRefusal] = useState<Refusal | null>(null);
  const [effect, setEffect] = useState<RuleEffect | null>(null);
  const [pending, begin] = useTransition();
  const send = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    setRefusal(null);
    const entered = enteredRule(new FormData(event.currentTarget), { kind, start, seen });
    begin(async () => {
      if (effect === null) {
        const { note: _note, source: _source, evidence: _evidence, ...proposed } = entered;
        const answer = await seeEffect(proposed);
        if (answer.ok) setEffect(answer.value);
        else setRefusal(answer.error);
        return;
      }
      const answer = await writeRule(entered);
      if (answer.ok) onWritten(answer.value);
      else setRefusal(answer.error);
    });
  };
  return (
    <form noValidate onSubmit={send} onChange={() => setEffect(null)} className="grid gap-4">
      <RuleFormFields kind={kind} start={start} problems={refusal?.fields ?? {}} />
      {effect === null ? null : <EffectList effect={effect} />}
      <FormMessage kind="problem">{refusal?.reason}</FormMessage>
      <div>
        <SubmitButton pending={pending}>
          {effect === null ? "See what it changes" : `Write version ${seen + 1}`}
        </SubmitButton>
      </div>
    </form>
  );
}

function enteredRule(
  data: FormData,
  { kind, start, seen }: Pick<RuleFormProps, "kind" | "start" | "seen">,
): ChangedRule {
  const text = (name: string) => String(data.get(name) ?? "");
  return {
    code: start?.code ?? text("code"),
    ...{ seen, kind, terms: termsOf(kind, text) },
    retired: data.get("retired") !== null,
    ...{ note: text("note"), source: text("source") },
    evidence: text("evidence") as ChangedRule["evidence"],
  };
}
