"use client";

import { useRouter } from "next/navigation";
import { useState, useTransition } from "react";
import { Button } from "@/app/_ui/Button";
import { FormMessage } from "@/app/_ui/FormMessage";
import { SelectField } from "@/app/_ui/field/SelectField";
import { setMyReportWish } from "@/app/(workspace)/account/actions";
import type { ReportWishes } from "@/lib/data/reportWish";
import { digestTraceWords } from "@/lib/view/digestTrace";
import { formWords } from "@/lib/view/reportArchive";

interface ReportMailProps {
  readonly state: ReportWishes;
  readonly sites: readonly { readonly id: string; readonly code: string; readonly name: string }[];
  /** Zone of the server, whose clock the sendings are told by. */
  readonly zone: string;
}

type Wish = Parameters<typeof setMyReportWish>[0];

const KINDS = [
  { value: "monthly", label: "Monthly report" },
  { value: "weekly", label: "Weekly changes" },
] as const;
const PAPERS = (["pdf_a4", "pdf_letter"] as const).map((form) => ({
  value: form,
  label: formWords(form).name,
}));
const GROUP = "group";

/** Which reports the person gets by mail whenever they are given out; what became of the last ones. */
export function ReportMail({ state: { wishes, mails, mayGroup }, sites, zone }: ReportMailProps) {
  const router = useRouter();
  const [pending, start] = useTransition();
  const [problem, setProblem] = useState<string | null>(null);
  const [wish, setWish] = useState({
    kind: "monthly",
    site: mayGroup ? GROUP : (sites[0]?.id ?? ""),
    form: "pdf_a4",
  });
  const set = (asked: Wish) =>
    start(async () => {
      const answer = await setMyReportWish(asked);
      setProblem(answer.ok ? null : (Object.values(answer.error.fields ?? {})[0] ?? answer.error.reason));
      if (answer.ok) router.refresh();
    });
  const places = [
    ...(mayGroup && wish.kind === "monthly" ? [{ value: GROUP, label: "The group" }] : []),
    ...sites.map(({ id, code, name }) => ({ value: id, label: `${code} ${name}` })),
  ];
  // The group has no week: with it chosen, the first site stands in.
  const site = places.some(({ value }) => value === wish.site) ? wish.site : (places[0]?.value ?? "");
  const field = (name: keyof typeof wish) => ({
    name,
    value: name === "site" ? site : wish[name],
    onChange: ({ target: { value } }: { readonly target: { readonly value: string } }) =>
      setWish({ ...wish, [name]: value }),
  });
  return (
    <>
      {wishes.length === 0 ? <p className="mb-3">None is sent to you.</p> : null}
      <ul className="mb-4 grid gap-2">
        {wishes.map(({ id, kind, siteId, siteCode, form }) => (
          <li key={id} className="flex flex-wrap items-center gap-3">
            {KINDS.find(({ value }) => value === kind)?.label} of {siteCode ?? "the group"},{" "}
            {formWords(form).name}
            <Button aria-disabled={pending} onClick={() => set({ kind, siteId, form: null })}>
              End it
            </Button>
          </li>
        ))}
      </ul>
      <div className="flex flex-wrap items-end gap-3">
        <SelectField label="Report" choices={KINDS} {...field("kind")} />
        <SelectField label="Of" choices={places} {...field("site")} />
        <SelectField label="Paper" choices={PAPERS} {...field("form")} />
        <Button
          aria-disabled={pending}
          onClick={() =>
            set({
              kind: wish.kind === "weekly" ? "weekly" : "monthly",
              siteId: site === GROUP ? null : site,
              form: wish.form === "pdf_letter" ? "pdf_letter" : "pdf_a4",
            })
          }
        >
          Send it to me
        </Button>
      </div>
      <FormMessage kind="problem">{problem}</FormMessage>
      {mails.length === 0 ? null : (
        <ul className="mt-3 list-disc pl-5">
          {mails.map((mail) => (
            <li key={mail.id}>
              {mail.title}. {digestTraceWords(mail, zone)}
            </li>
          ))}
        </ul>
      )}
    </>
  );
}
