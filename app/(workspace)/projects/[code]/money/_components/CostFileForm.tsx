"use client";

import { useRef, useState, useTransition } from "react";
import { Button } from "@/app/_ui/Button";
import { FormMessage } from "@/app/_ui/FormMessage";
import { FileField } from "@/app/_ui/field/FileField";
import { SelectField } from "@/app/_ui/field/SelectField";
import { TextareaField } from "@/app/_ui/field/TextareaField";
import { SubmitButton } from "@/app/_ui/SubmitButton";
import type { useProjectChange } from "@/app/(workspace)/projects/[code]/_components/useProjectChange";
import { CostPreviewTable } from "@/app/(workspace)/projects/[code]/money/_components/CostPreviewTable";
import {
  readTheseCosts,
  takeCostsBack,
  takeTheseCosts,
} from "@/app/(workspace)/projects/[code]/money/actions";
import type { Refusal } from "@/lib/access/action";
import { type CostPreview, countRows } from "@/lib/view/costImport";
import { waysToRead } from "@/lib/view/importQuestion";
import { count } from "@/lib/view/number";

interface CostFileFormProps {
  readonly projectId: string;
  readonly change: ReturnType<typeof useProjectChange>;
}

const QUESTIONS = {
  decimalMark: "How the file writes numbers",
  dateOrder: "How the file writes dates",
  quantityBasis: "What the quantities count",
} as const;

/** Hands in a file or pasted rows, shows what would become of each row, then takes them over. */
export function CostFileForm({ projectId, change }: CostFileFormProps) {
  const form = useRef<HTMLFormElement>(null);
  const [pending, start] = useTransition();
  const [refusal, setRefusal] = useState<Refusal | null>(null);
  const [preview, setPreview] = useState<CostPreview | null>(null);
  const data = () => {
    const handed = new FormData(form.current ?? undefined);
    handed.set("projectId", projectId);
    return handed;
  };
  const look = () =>
    start(async () => {
      const answer = await readTheseCosts(data());
      setRefusal(answer.ok ? null : answer.error);
      setPreview(answer.ok ? answer.value : null);
    });
  const take = (added: number) =>
    change.run({
      run: () => takeTheseCosts(data()),
      done: `${count(added, "entry", "entries")} taken over.`,
      undo: ({ importId }) => takeCostsBack({ projectId, importId }),
      after: () => {
        form.current?.reset();
        setPreview(null);
      },
    });
  const added = preview === null ? 0 : countRows(preview).added;
  const isReady = preview !== null && preview.questions.length === 0 && added > 0;
  return (
    <form
      ref={form}
      onSubmit={(event) => {
        event.preventDefault();
        look();
      }}
      onChange={() => setPreview((seen) => (seen && seen.questions.length > 0 ? seen : null))}
      noValidate
      aria-label="Orders and invoices from a file"
      className="no-print mt-4 grid gap-4 sm:grid-cols-2"
    >
      <FileField
        name="file"
        label="File"
        accept=".csv,.txt,.xlsx"
        hint=".csv, .txt or .xlsx, up to 5 MB."
        error={refusal?.fields?.file}
      />
      <TextareaField
        name="pasted"
        label="Or rows pasted from a sheet, with their column names"
        rows={3}
        error={refusal?.fields?.pasted}
      />
      {preview?.questions.map(({ custom, examples }) => (
        <SelectField
          key={custom}
          name={custom}
          label={QUESTIONS[custom]}
          hint={`Such as ${examples.slice(0, 3).join(", ")}`}
          empty="Please say"
          required
          choices={waysToRead(custom).map(({ value, label }) => ({ value, label }))}
        />
      ))}
      <div className="flex flex-wrap gap-2 sm:col-span-2">
        <SubmitButton kind="plain" pending={pending} pendingText="Reading…">
          Look at the rows
        </SubmitButton>
        {isReady ? (
          <Button kind="primary" aria-disabled={change.pending} onClick={() => take(added)}>
            {`Take ${count(added, "entry", "entries")} over`}
          </Button>
        ) : null}
      </div>
      <div className="sm:col-span-2">
        <FormMessage kind="problem">{refusal?.reason}</FormMessage>
        {preview === null ? null : <CostPreviewTable preview={preview} />}
      </div>
    </form>
  );
}
