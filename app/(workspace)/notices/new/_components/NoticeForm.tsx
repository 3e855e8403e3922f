"use client";

import { useRouter } from "next/navigation";
import { useRef, useState, useTransition } from "react";
import { Button } from "@/app/_ui/Button";
import { FormMessage } from "@/app/_ui/FormMessage";
import { Section } from "@/app/_ui/Section";
import { keepThisNotice, lookOverNotice, readThisNotice } from "@/app/(workspace)/notices/actions";
import { NoticeFieldset, type NoticeStart } from "@/app/(workspace)/notices/new/_components/NoticeFieldset";
import { NoticePreviewView } from "@/app/(workspace)/notices/new/_components/NoticePreviewView";
import { SourceFields } from "@/app/(workspace)/notices/new/_components/SourceFields";
import type { Refusal } from "@/lib/access/action";
import type { NoticeProposal } from "@/lib/intake/notice/readNotice";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { emptyDraft, filledDraft, type NoticeDraft, sentNotice } from "@/lib/view/noticeDraft";
import type { NoticePreview } from "@/lib/view/noticePreview";

interface NoticeFormProps {
  readonly today: IsoDate;
  readonly start: NoticeStart;
}

/** Reading, confirming, looking over and keeping a notice, in that order, on one page. */
export function NoticeForm({ today, start }: NoticeFormProps) {
  const router = useRouter();
  const [draft, setDraft] = useState(() => emptyDraft(today, start.cycle));
  const [found, setFound] = useState<NoticeProposal | null>(null);
  const [preview, setPreview] = useState<NoticePreview | null>(null);
  const [refusal, setRefusal] = useState<Refusal | null>(null);
  const [pending, begin] = useTransition();
  const source = useRef<HTMLFormElement>(null);
  const sourceData = () => new FormData(source.current ?? undefined);

  const change = (next: NoticeDraft) => {
    setDraft(next);
    setPreview(null);
  };
  const read = () =>
    begin(async () => {
      const answer = await readThisNotice(sourceData());
      setRefusal(answer.ok ? null : answer.error);
      if (!answer.ok) return;
      setFound(answer.value);
      change(filledDraft(draft, answer.value));
    });
  const lookOver = () =>
    begin(async () => {
      const answer = await lookOverNotice(sentNotice(draft));
      setRefusal(answer.ok ? null : answer.error);
      setPreview(answer.ok ? answer.value : null);
    });
  const keep = ({ basis }: NoticePreview) =>
    begin(async () => {
      const data = sourceData();
      data.set("fields", JSON.stringify(sentNotice(draft)));
      data.set("basis", basis);
      const answer = await keepThisNotice(data);
      if (answer.ok) router.push(`/notices/${answer.value.noticeId}`);
      else setRefusal(answer.error);
    });

  return (
    <>
      <Section title="What the maker wrote" lead="Skip this to type the notice in by hand.">
        <SourceFields form={source} onRead={read} pending={pending} problems={refusal?.fields ?? {}} />
      </Section>
      <Section title="What it says">
        <form
          noValidate
          className="grid gap-4"
          onSubmit={(event) => {
            event.preventDefault();
            lookOver();
          }}
        >
          <NoticeFieldset {...{ draft, change, found, start }} problems={refusal?.fields ?? {}} />
          <FormMessage kind="problem">{refusal?.reason}</FormMessage>
          <div>
            <Button type="submit" kind={preview ? "plain" : "primary"} aria-disabled={pending}>
              {pending ? "Working…" : "Look it over"}
            </Button>
            <span className="ml-3 text-ink-2 text-sm">Nothing is kept yet.</span>
          </div>
        </form>
      </Section>
      {preview ? (
        <NoticePreviewView preview={preview} pending={pending} onKeep={() => keep(preview)} />
      ) : null}
    </>
  );
}
