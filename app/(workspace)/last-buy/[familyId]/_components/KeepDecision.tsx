import { useRouter } from "next/navigation";
import { type FormEvent, useState, useTransition } from "react";
import { FormMessage } from "@/app/_ui/FormMessage";
import { DateField } from "@/app/_ui/field/DateField";
import { TextareaField } from "@/app/_ui/field/TextareaField";
import { TextField } from "@/app/_ui/field/TextField";
import { Section } from "@/app/_ui/Section";
import { SubmitButton } from "@/app/_ui/SubmitButton";
import { ShelfFields } from "@/app/(workspace)/last-buy/[familyId]/_components/ShelfFields";
import { keepThisDecision } from "@/app/(workspace)/last-buy/actions";
import type { Refusal } from "@/lib/access/action";
import type { TypedDecision } from "@/lib/schema/buyDecision";
import type { BuyDocument } from "@/lib/view/buyDocument";

interface KeepDecisionProps {
  readonly document: BuyDocument;
  readonly standing: string | null;
}

function typed(data: FormData, { document, standing }: KeepDecisionProps): TypedDecision {
  const text = (name: string) => String(data.get(name) ?? "");
  return {
    ...{ familyId: document.family.id, choice: document.choice, supersedes: standing },
    dataVersion: document.basis.dataVersion,
    quantities: document.shelves.map(({ partId, siteId }) => {
      const entered = text(`${partId} ${siteId}`);
      return { partId, siteId, quantity: entered === "" ? 0 : Number(entered) };
    }),
    ...{ orderBy: text("orderBy"), names: text("names"), reason: text("reason") },
  };
}

/** Keeps what was decided, with the sheet as it stands. */
export function KeepDecision({ document, standing }: KeepDecisionProps) {
  const router = useRouter();
  const [pending, start] = useTransition();
  const [refusal, setRefusal] = useState<Refusal | null>(null);
  const send = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    setRefusal(null);
    const wanted = typed(new FormData(event.currentTarget), { document, standing });
    start(async () => {
      const answer = await keepThisDecision(wanted);
      if (answer.ok) router.push(`/last-buy/decisions/${answer.value.decisionId}`);
      else setRefusal(answer.error);
      // The sheet is brought up to date around what is typed.
      if (!answer.ok && answer.error.code === "conflict") router.refresh();
    });
  };
  return (
    <Section
      id="decide"
      title={standing === null ? "Keep the decision" : "Keep another decision"}
      lead={
        standing === null
          ? "Kept with every step above, frozen: whatever changes later, it reads the same."
          : "A decision stands already. It stays on record; this one takes its place, and the reason says why."
      }
    >
      <form noValidate onSubmit={send} className="no-print grid gap-4">
        {/* Another choice brings its own split; names and reason stay as typed. */}
        <ShelfFields
          key={JSON.stringify(document.choice)}
          shelves={document.shelves}
          prices={document.prices}
        />
        <div className="grid gap-4 sm:grid-cols-2">
          <TextField
            name="names"
            label="Decided by"
            hint="Names or functions of those who decide."
            required
            maxLength={300}
            autoComplete="off"
            error={refusal?.fields?.names}
          />
          <DateField
            name="orderBy"
            label="Start the order by"
            defaultValue={document.orderByOn ?? ""}
            error={refusal?.fields?.orderBy}
          />
        </div>
        <TextareaField
          name="reason"
          label="Reason"
          required
          rows={3}
          maxLength={2000}
          error={refusal?.fields?.reason}
        />
        <FormMessage kind="problem">{refusal?.reason}</FormMessage>
        <div>
          <SubmitButton pending={pending}>Keep the decision</SubmitButton>
        </div>
      </form>
    </Section>
  );
}
