"use client";

import { type FocusEvent, useCallback } from "react";
import { Button } from "@/app/_ui/Button";
import type { Draft } from "@/app/_ui/draft/keptDraft";
import { keptWords } from "@/app/_ui/draft/keptWords";
import { RefusedDraft } from "@/app/_ui/draft/RefusedDraft";
import { useKeptDraft } from "@/app/_ui/draft/useKeptDraft";
import { EntryFields } from "@/app/(workspace)/counts/[id]/_components/EntryFields";
import { writeThisLine } from "@/app/(workspace)/counts/actions";
import { countEntry, type TypedCount } from "@/lib/schema/count";
import { bookWords, type CountLine, entryWords, lineTitle } from "@/lib/view/count";

interface LineFormProps {
  readonly countId: string;
  readonly line: CountLine;
  /** Takes a find off the sheet. */
  readonly onDrop?: (line: CountLine) => void;
}

/** One lot of the sheet: opened to be written, saved when its form is left, kept on the device without a connection. */
export function LineForm({ countId, line, onDrop }: LineFormProps) {
  const { id: lineId, version } = line;
  const write = useCallback(
    (draft: Draft<TypedCount>) => writeThisLine({ countId, lineId, ...draft }),
    [countId, lineId],
  );
  const stored = { entry: line.entry, version };
  const kept = useKeptDraft({ name: `ebbline count ${countId} ${lineId}`, stored, write });
  const { entry, type, refusal } = kept;
  const read = countEntry.safeParse(entry);
  const errorOf = (name: string) =>
    refusal?.fields?.[`entry.${name}`] ??
    (read.success ? undefined : read.error.issues.find(({ path }) => path[0] === name)?.message);
  const leave = ({ currentTarget, relatedTarget }: FocusEvent<HTMLFormElement>) => {
    if (!currentTarget.contains(relatedTarget)) kept.leave();
  };
  const said = kept.kept === "saved" ? entryWords(line.entry, line.countedBy) : keptWords[kept.kept];
  const title = lineTitle(line);
  return (
    <details className="disclosure border-rule border-b">
      <summary className="flex min-h-11 flex-wrap items-baseline gap-x-4 py-2">
        <span className="font-semibold">{title}</span>
        <span className="text-ink-2 text-sm">{line.description ?? "No part is known by this number"}</span>
        <span className={`ml-auto ${kept.kept === "refused" ? "font-semibold" : "text-ink-2"}`}>{said}</span>
      </summary>
      <form
        aria-label={title}
        noValidate
        onBlur={leave}
        onSubmit={(event) => {
          event.preventDefault();
          kept.leave();
        }}
        className="pb-4"
      >
        {line.book ? <p className="mb-2 text-ink-2">On the book: {bookWords(line.book)}.</p> : null}
        <div className="grid gap-4 sm:grid-cols-2 lg:grid-cols-4">
          <EntryFields entry={entry} type={type} errorOf={errorOf} />
        </div>
        <p className="mt-2 text-ink-2" role="status">
          {kept.kept === "saved" && line.countedBy === "" ? "" : keptWords[kept.kept]}
        </p>
        <RefusedDraft refusal={kept.kept === "refused" ? refusal : null} onSettle={kept.settle}>
          <dl className="mt-2 grid grid-cols-[auto_1fr] gap-x-4">
            <dt className="label">Theirs</dt>
            <dd>{entryWords(line.entry, line.countedBy)}</dd>
            <dt className="label">Yours</dt>
            <dd>{entryWords(entry, "you")}</dd>
          </dl>
        </RefusedDraft>
        <div className="mt-2 flex gap-2">
          <Button type="submit">Save this line</Button>
          {onDrop ? (
            <Button kind="quiet" onClick={() => onDrop(line)}>
              Take it off the sheet
            </Button>
          ) : null}
        </div>
      </form>
    </details>
  );
}
