"use client";

import { useRouter } from "next/navigation";
import { useState, useTransition } from "react";
import { Button } from "@/app/_ui/Button";
import { FormMessage } from "@/app/_ui/FormMessage";
import { Notice } from "@/app/_ui/Notice";
import { readAgain } from "@/app/(workspace)/import/actions";
import type { Refusal } from "@/lib/access/action";
import type { ChooseReading } from "@/lib/schema/import";
import type { ImportColumn, ImportCustom } from "@/lib/view/importPreview";
import { answersOf, mappingOf } from "@/lib/view/importReading";
import { CustomChoice } from "./CustomChoice";
import { type FieldChoice, MappingTable } from "./MappingTable";
import { useStagedState } from "./StagedState";

interface Props {
  readonly batchId: string;
  readonly columns: readonly ImportColumn[];
  readonly customs: readonly ImportCustom[];
  readonly fields: readonly FieldChoice[];
  readonly missing: readonly string[];
}

type Answers = ChooseReading["answers"];

/** The answers with one more, or without the one taken back. */
function withAnswer(answers: Answers, custom: ImportCustom["custom"], value: string | null): Answers {
  return { ...answers, [custom]: value ?? undefined };
}

/** Which column is which field, and how numbers and dates are written; “Read again” shows what follows from it. */
export function ReadingForm({ batchId, columns, customs, fields, missing }: Props) {
  const router = useRouter();
  const { isUnread, setUnread } = useStagedState();
  const [mapping, setMapping] = useState(() => mappingOf(columns));
  const [answers, setAnswers] = useState(() => answersOf(customs));
  const [refusal, setRefusal] = useState<Refusal | null>(null);
  const [pending, start] = useTransition();

  const save = () =>
    start(async () => {
      const answer = await readAgain({ batchId, mapping, answers });
      setRefusal(answer.ok ? null : answer.error);
      if (!answer.ok) return;
      setUnread(false);
      router.refresh();
    });

  return (
    <>
      {missing.length > 0 ? (
        <Notice kind="problem" title="Something every row needs has no column">
          {missing.join(". ")}. Choose the column that holds it, or add one to the file.
        </Notice>
      ) : null}
      <MappingTable
        columns={columns}
        fields={fields}
        mapping={mapping}
        onChoose={(header, field) => {
          setMapping({ ...mapping, [header]: field });
          setUnread(true);
        }}
      />
      <div className="mt-5 grid gap-5 lg:grid-cols-2">
        {customs
          .filter((custom) => custom.state !== "plain")
          .map((custom) => (
            <CustomChoice
              key={custom.custom}
              custom={custom}
              answer={answers[custom.custom] ?? null}
              onAnswer={(value) => {
                setAnswers(withAnswer(answers, custom.custom, value));
                setUnread(true);
              }}
            />
          ))}
      </div>
      <FormMessage kind="problem">
        {refusal ? [refusal.reason, ...Object.values(refusal.fields ?? {})].join(" ") : ""}
      </FormMessage>
      <div className="mt-4 flex flex-wrap items-center gap-3">
        <Button kind={isUnread ? "primary" : "plain"} onClick={save} disabled={pending}>
          {pending ? "Reading…" : "Read again"}
        </Button>
        <span role="status" className="text-ink-2 text-sm">
          {isUnread ? "What stands below is still by the earlier choices." : ""}
        </span>
      </div>
    </>
  );
}
