"use client";

import { useRouter } from "next/navigation";
import { type FormEvent, useState, useTransition } from "react";
import { Button } from "@/app/_ui/Button";
import { FormMessage } from "@/app/_ui/FormMessage";
import { SelectField } from "@/app/_ui/field/SelectField";
import { SubmitButton } from "@/app/_ui/SubmitButton";
import { readAgain } from "@/app/(workspace)/import/actions";
import type { ChooseReading } from "@/lib/schema/import";
import type { ImportColumn, ImportCustom } from "@/lib/view/importPreview";
import { answersOf, choiceOfForm, mappingOf } from "@/lib/view/importReading";
import type { ImportOpening } from "@/lib/view/importView";
import { ENCODING_WORDS, SEPARATOR_WORDS } from "@/lib/view/importWords";
import { plainNumber } from "@/lib/view/number";
import { FirstRows } from "./FirstRows";

interface Props {
  readonly batchId: string;
  readonly opening: ImportOpening;
  /** The columns as they are read now; they stay when the choice leaves them the same. */
  readonly columns: readonly ImportColumn[];
  readonly customs: readonly ImportCustom[];
}

const choicesOf = (words: Readonly<Record<string, string>>) =>
  Object.entries(words).map(([value, label]) => ({ value, label }));

/** Sheet, letters, separator and header row, where a person knows better than what was found. */
export function FileChoice({ batchId, opening, columns, customs }: Props) {
  const router = useRouter();
  const [reason, setReason] = useState("");
  const [pending, start] = useTransition();
  const read = (reading: NonNullable<ChooseReading["reading"]>) =>
    start(async () => {
      const answer = await readAgain({
        batchId,
        mapping: mappingOf(columns),
        answers: answersOf(customs),
        reading,
      });
      setReason(answer.ok ? "" : answer.error.reason);
      if (answer.ok) router.refresh();
    });
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    read(choiceOfForm(opening, new FormData(event.currentTarget)));
  };
  return (
    <form onSubmit={submit} className="mt-3 grid grid-cols-1 gap-4">
      <div className="grid max-w-3xl grid-cols-1 gap-4 sm:grid-cols-2">
        <Selects opening={opening} />
      </div>
      <FirstRows opening={opening} />
      <FormMessage kind="problem">{reason}</FormMessage>
      <div className="flex flex-wrap gap-2">
        <SubmitButton pending={pending} pendingText="Reading…">
          Read the file this way
        </SubmitButton>
        {Object.keys(opening.chosen).length > 0 ? (
          <Button onClick={() => read({})} disabled={pending}>
            Back to what was found
          </Button>
        ) : null}
      </div>
    </form>
  );
}

function Selects({ opening }: { readonly opening: ImportOpening }) {
  const { format, encoding, separator, sheet, sheets } = opening;
  if (format === "workbook") {
    const offers = sheets.map(({ name, hidden, rows }) => ({
      value: name,
      label: `${name}, ${plainNumber(rows)} rows${hidden ? ", hidden" : ""}`,
    }));
    return <SelectField label="Sheet" name="sheet" choices={offers} defaultValue={sheet} required />;
  }
  return (
    <>
      <SelectField
        label="Letters"
        name="encoding"
        choices={choicesOf(ENCODING_WORDS)}
        defaultValue={encoding ?? undefined}
        required
      />
      <SelectField
        label="Columns parted by"
        name="separator"
        choices={choicesOf(SEPARATOR_WORDS)}
        defaultValue={separator ?? undefined}
        required
      />
    </>
  );
}
