import { SelectField } from "@/app/_ui/field/SelectField";
import { TextareaField } from "@/app/_ui/field/TextareaField";
import { TextField } from "@/app/_ui/field/TextField";
import { NoticeDays } from "@/app/(workspace)/notices/new/_components/NoticeDays";
import { PartsField } from "@/app/(workspace)/notices/new/_components/PartsField";
import type { NoticeProposal } from "@/lib/intake/notice/readNotice";
import type { PurchaseCycle } from "@/lib/lifecycle/orderBy";
import { evidenceView } from "@/lib/view/evidence";
import type { NoticeDraft } from "@/lib/view/noticeDraft";

/** What the form begins with. */
export interface NoticeStart {
  readonly cycle: PurchaseCycle;
  readonly families: readonly string[];
  readonly makers: readonly string[];
}

export interface NoticeFieldsetProps {
  readonly draft: NoticeDraft;
  readonly change: (next: NoticeDraft) => void;
  /** What was found in the text; null is nothing read. */
  readonly found: NoticeProposal | null;
  readonly start: NoticeStart;
  readonly problems: Readonly<Record<string, string>>;
}

const EVIDENCE = (["documented", "inferred", "assumed"] as const).map((value) => ({
  value,
  label: `${evidenceView(value).text}: ${evidenceView(value).sentence}`,
}));

/** Every entry of a notice; each can be typed, whatever was found. */
export function NoticeFieldset(props: NoticeFieldsetProps) {
  const { draft, change, start, problems } = props;
  const field = (name: "document" | "successor" | "note" | "maker" | "evidence") => ({
    ...{ name, value: draft[name], error: problems[name] },
    onChange: ({ target }: { readonly target: { readonly value: string } }) =>
      change({ ...draft, [name]: target.value }),
  });
  return (
    <>
      <div className="grid gap-4 sm:grid-cols-2">
        <TextField
          {...field("document")}
          label="Document"
          hint="Its name or number; the dates rest on it."
          required
          maxLength={200}
          autoComplete="off"
        />
        <SelectField
          {...field("maker")}
          label="Maker"
          empty="Any maker"
          choices={start.makers.map((value) => ({ value, label: value }))}
        />
        <PartsField {...props} />
        <TextField
          {...field("successor")}
          label="Successor"
          hint="A number on record; with * as in the parts, each part gets its own: TM-HE-*."
          maxLength={120}
          autoComplete="off"
        />
      </div>
      <NoticeDays {...props} />
      <div className="grid gap-4 sm:grid-cols-2">
        <SelectField {...field("evidence")} label="How well it is known" required choices={EVIDENCE} />
        <TextareaField {...field("note")} label="Note" rows={2} maxLength={1000} />
      </div>
    </>
  );
}
