import { FormMessage } from "@/app/_ui/FormMessage";
import { DateField } from "@/app/_ui/field/DateField";
import { SelectField } from "@/app/_ui/field/SelectField";
import { TextareaField } from "@/app/_ui/field/TextareaField";
import { TextField } from "@/app/_ui/field/TextField";
import { WhyField } from "@/app/_ui/field/WhyField";
import { SubmitButton } from "@/app/_ui/SubmitButton";
import { useSend } from "@/app/_ui/useSend";
import type { Refusal } from "@/lib/access/action";
import type { Result } from "@/lib/kernel/result";
import type { AddObligation } from "@/lib/schema/obligation";
import { evidenceChoices } from "@/lib/view/evidence";
import { type Obligation, type ObligationPlace, obligationWords } from "@/lib/view/obligation";

interface Saved {
  readonly obligationId: string;
  readonly version: number;
}

interface ObligationFormProps {
  /** What is changed; absent is a new one. */
  readonly duty?: Obligation;
  readonly places: readonly ObligationPlace[];
  readonly save: (wanted: AddObligation, why: string) => Promise<Result<Saved, Refusal>>;
  readonly onSaved: (saved: Saved, title: string) => void;
}

const KINDS = (["safety", "legal"] as const).map((value) => ({ value, label: obligationWords(value).name }));

/** A site and perhaps a line as one choice. */
const placeOf = (siteId: string, lineId: string | null) => `${siteId}/${lineId ?? ""}`;

function placeChoices(places: readonly ObligationPlace[]) {
  return places.flatMap(({ id, code, name, lines }) => [
    { value: placeOf(id, null), label: `${code} ${name}, whole site` },
    ...lines.map((line) => ({ value: placeOf(id, line.id), label: `${line.code} ${line.name}` })),
  ]);
}

function dutyOf(data: FormData): AddObligation {
  const text = (name: string) => String(data.get(name) ?? "").trim();
  const [siteId = "", lineId = ""] = text("place").split("/");
  return {
    siteId,
    lineId: lineId === "" ? null : lineId,
    kind: KINDS.find(({ value }) => value === text("kind"))?.value ?? "safety",
    title: text("title"),
    dueOn: text("dueOn"),
    source: text("source"),
    owner: text("owner") === "" ? null : text("owner"),
    evidence: evidenceChoices.find(({ value }) => value === text("evidence"))?.value ?? "assumed",
  };
}

/** What is said of a safety or legal date, as a form. */
export function ObligationForm({ duty, places, save, onSaved }: ObligationFormProps) {
  const { pending, reason, send, errorOf } = useSend<Saved>({
    save: (data) => save(dutyOf(data), String(data.get("why") ?? "")),
    onSaved: (saved, data) => onSaved(saved, dutyOf(data).title),
  });
  const field = (name: "title" | "dueOn" | "source" | "owner" | "kind") => ({
    ...{ name, defaultValue: duty?.[name] ?? "", error: errorOf(name) },
  });
  return (
    <form noValidate className="grid gap-4" onSubmit={send}>
      <TextField {...field("title")} label="What must be done" required maxLength={200} autoComplete="off" />
      <div className="grid gap-4 sm:grid-cols-2">
        <SelectField
          name="place"
          label="What it concerns"
          required
          empty="Choose a site or a line"
          choices={placeChoices(places)}
          defaultValue={duty ? placeOf(duty.siteId, duty.line?.id ?? null) : ""}
          error={errorOf("siteId") ?? errorOf("lineId")}
        />
        <DateField {...field("dueOn")} label="Due on" required />
        <SelectField
          {...field("kind")}
          label="Kind"
          required
          choices={KINDS}
          defaultValue={duty?.kind ?? "safety"}
        />
        <TextField
          {...field("owner")}
          label="Who answers for it"
          hint="A function, not a person's name."
          maxLength={120}
          autoComplete="off"
        />
      </div>
      <TextareaField
        {...field("source")}
        label="Where the duty comes from"
        hint="Document, clause, file."
        required
        rows={2}
        maxLength={300}
      />
      <SelectField
        name="evidence"
        label="How well the day is known"
        required
        choices={evidenceChoices}
        defaultValue={duty?.evidence ?? "documented"}
      />
      {duty ? <WhyField error={errorOf("why")} /> : null}
      <FormMessage kind="problem">{reason}</FormMessage>
      <div>
        <SubmitButton pending={pending}>Save the date</SubmitButton>
      </div>
    </form>
  );
}
