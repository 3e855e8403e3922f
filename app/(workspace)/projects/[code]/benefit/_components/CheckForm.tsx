"use client";

import { Button } from "@/app/_ui/Button";
import { orOffline } from "@/app/_ui/draft/orOffline";
import { EntryForm } from "@/app/_ui/EntryForm";
import { TextareaField } from "@/app/_ui/field/TextareaField";
import { Notice } from "@/app/_ui/Notice";
import { Section } from "@/app/_ui/Section";
import { UndoBar } from "@/app/_ui/UndoBar";
import { useDone } from "@/app/(workspace)/_components/useDone";
import { checkIt, reopenCheck } from "@/app/(workspace)/projects/[code]/benefit/actions";
import type { BenefitFile } from "@/lib/view/benefit";
import { day } from "@/lib/view/time";

interface CheckFormProps {
  readonly projectId: string;
  readonly closing: NonNullable<BenefitFile["closing"]>;
  readonly mayWrite: boolean;
}

/** What came of the project in words, by name and day; it keeps the figures as they stood. */
export function CheckForm({ projectId, closing, mayWrite }: CheckFormProps) {
  const { done, tell, undo, close } = useDone();
  const { checkedOn, checkedBy, conclusion } = closing;
  const reopen = async () => {
    const answer = await orOffline(reopenCheck({ projectId }));
    tell({ message: answer.ok ? "The check was taken back." : answer.error.reason });
  };
  return (
    <Section title="What came of it" id="check">
      {checkedOn !== null ? (
        <Notice kind="info" title={`Checked ${day(checkedOn)} by ${checkedBy}`}>
          <p>{conclusion}</p>
          {mayWrite ? (
            <div className="no-print mt-2">
              <Button onClick={reopen}>Take the check back</Button>
            </div>
          ) : null}
        </Notice>
      ) : mayWrite ? (
        <EntryForm
          submit="Keep the check"
          save={(text) => orOffline(checkIt({ projectId, conclusion: text("conclusion") }))}
          onSaved={() => tell({ message: "The check is kept.", undo: () => reopenCheck({ projectId }) })}
        >
          {(errorOf) => (
            <TextareaField
              name="conclusion"
              label="What came of it, and what the next request should do otherwise"
              rows={4}
              maxLength={1000}
              required
              error={errorOf("conclusion")}
            />
          )}
        </EntryForm>
      ) : (
        <p className="text-ink-2">The check is due and nobody wrote it yet.</p>
      )}
      <UndoBar message={done?.message ?? null} {...(done?.undo ? { onUndo: undo } : {})} onClose={close} />
    </Section>
  );
}
