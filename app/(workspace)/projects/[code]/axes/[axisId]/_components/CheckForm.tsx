"use client";

import type { FocusEvent } from "react";
import { keptWords } from "@/app/_ui/draft/keptWords";
import { RefusedDraft } from "@/app/_ui/draft/RefusedDraft";
import { DateField } from "@/app/_ui/field/DateField";
import { TextField } from "@/app/_ui/field/TextField";
import { useKeptEntry } from "@/app/(workspace)/projects/[code]/axes/[axisId]/_components/useKeptEntry";
import { Values } from "@/app/(workspace)/projects/[code]/axes/[axisId]/_components/Values";
import type { JudgedCheck } from "@/lib/retrofit/judgeAxis";
import { judgeCheck } from "@/lib/retrofit/judgeCheck";
import { axisEntry } from "@/lib/schema/axisRecord";
import { type AxisFile, recordedValue, typedEntry, verdictWords } from "@/lib/view/axisRecord";

interface CheckFormProps {
  readonly axis: AxisFile;
  readonly judged: JudgedCheck;
}

/** One check to fill in; it is judged while one types and saved when its form is left. */
export function CheckForm({ axis, judged }: CheckFormProps) {
  const { check, entry: stored } = judged;
  const version = axis.entries[check.id]?.version ?? 0;
  const started = { entry: typedEntry(stored, recordedValue(check.id, axis)), version };
  const { projectId, id: axisId } = axis;
  const kept = useKeptEntry({ projectId, axisId, checkId: check.id }, started);
  const { entry, type, refusal } = kept;
  const read = axisEntry.safeParse(entry);
  const verdict = read.success ? judgeCheck(check, read.data) : judged.verdict;
  const errorOf = (name: string) =>
    refusal?.fields?.[`entry.${name}`] ??
    (read.success ? undefined : read.error.issues.find(({ path }) => path[0] === name)?.message);
  const leave = ({ currentTarget, relatedTarget }: FocusEvent<HTMLFormElement>) => {
    if (!currentTarget.contains(relatedTarget)) kept.leave();
  };
  return (
    <form onBlur={leave} onSubmit={(event) => event.preventDefault()} aria-label={check.title} noValidate>
      <div className="grid gap-4 sm:grid-cols-2 lg:grid-cols-4">
        <Values check={check} travelUnit={axis.travelUnit} entry={entry} type={type} errorOf={errorOf} />
        <TextField
          name={`${check.id}-by`}
          label="Done by"
          required
          value={entry.by}
          onChange={(event) => type({ by: event.target.value })}
          error={errorOf("by")}
        />
        {check.twoNames ? (
          <TextField
            name={`${check.id}-witness`}
            label="Second name"
            required
            value={entry.witness}
            onChange={(event) => type({ witness: event.target.value })}
            error={errorOf("witness")}
          />
        ) : null}
        <DateField
          name={`${check.id}-on`}
          label="Day"
          required
          value={entry.on}
          onChange={(event) => type({ on: event.target.value })}
          error={errorOf("on")}
        />
        <TextField
          name={`${check.id}-not`}
          label="Does not apply because"
          value={entry.notApplicable}
          onChange={(event) => type({ notApplicable: event.target.value })}
          error={errorOf("notApplicable")}
        />
      </div>
      <p className="mt-2" role="status">
        <span className="font-semibold">{verdictWords(verdict)}</span> · {verdict.reason}{" "}
        <span className="text-ink-2">
          {kept.kept === "saved" && version === 0 ? "" : keptWords[kept.kept]}
        </span>
      </p>
      <RefusedDraft refusal={kept.kept === "refused" ? refusal : null} onSettle={kept.settle} />
    </form>
  );
}
