"use client";

import { useCallback } from "react";
import type { Draft } from "@/app/_ui/draft/keptDraft";
import { keptWords } from "@/app/_ui/draft/keptWords";
import { RefusedDraft } from "@/app/_ui/draft/RefusedDraft";
import { useKeptDraft } from "@/app/_ui/draft/useKeptDraft";
import { TextareaField } from "@/app/_ui/field/TextareaField";
import { Section } from "@/app/_ui/Section";
import type { Desk } from "@/app/(workspace)/review/_components/desk";
import { noteDraft } from "@/app/(workspace)/review/_components/noteDraft";
import { setThisNote } from "@/app/(workspace)/review/actions";
import { REVIEW_TOPICS, type ReviewNotes } from "@/lib/view/reviewRecord";

interface NoteSectionProps {
  readonly desk: Desk;
  readonly notes: ReviewNotes;
  readonly isOpen: boolean;
}

/** Minutes of the open review, topic by topic. */
export function NoteSection({ desk: { reviewId }, notes, isOpen }: NoteSectionProps) {
  if (!isOpen) return null;
  return (
    <Section
      title="Minutes"
      id="minutes"
      lead={reviewId === null ? undefined : "Saved when you leave a field; until then kept on this device."}
    >
      <div className="grid max-w-3xl gap-5">
        {REVIEW_TOPICS.map((about) => {
          const note = notes[about.topic];
          return reviewId === null ? (
            <ReadNote key={about.topic} label={about.label} text={note.text} />
          ) : (
            <Note
              key={about.topic}
              {...{ about, reviewId }}
              stored={{ entry: { text: note.text }, version: note.version }}
            />
          );
        })}
      </div>
    </Section>
  );
}

function ReadNote({ label, text }: { readonly label: string; readonly text: string }) {
  return (
    <div>
      <p className="label">{label}</p>
      <p className="whitespace-pre-line">{text === "" ? "nothing written" : text}</p>
    </div>
  );
}

interface NoteProps {
  readonly about: (typeof REVIEW_TOPICS)[number];
  readonly reviewId: string;
  readonly stored: Draft<{ readonly text: string }>;
}

function Note({ about: { topic, label, rows, hint }, reviewId, stored }: NoteProps) {
  const write = useCallback(
    ({ entry, version }: Draft<{ readonly text: string }>) =>
      setThisNote({ reviewId, topic, version, text: entry.text }),
    [reviewId, topic],
  );
  const note = useKeptDraft({ name: noteDraft(reviewId, topic), stored, write });
  return (
    <form aria-label={label} onBlur={note.leave} onSubmit={(event) => event.preventDefault()} noValidate>
      <TextareaField
        name={topic}
        label={label}
        hint={hint}
        rows={rows}
        maxLength={1_200}
        value={note.entry.text}
        onChange={(event) => note.type({ text: event.target.value })}
        error={note.refusal?.fields?.text}
      />
      <p className="text-ink-2 text-sm" role="status">
        {note.kept === "saved" && stored.version === 0 ? "" : keptWords[note.kept]}
      </p>
      <RefusedDraft refusal={note.kept === "refused" ? note.refusal : null} onSettle={note.settle}>
        <p className="mt-2 whitespace-pre-line border-rule-2 border-l-4 pl-3">{`Theirs: ${stored.entry.text}`}</p>
      </RefusedDraft>
    </form>
  );
}
