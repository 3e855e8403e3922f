"use client";

import { useRouter } from "next/navigation";
import { EntryForm } from "@/app/_ui/EntryForm";
import { SelectField } from "@/app/_ui/field/SelectField";
import { TextField } from "@/app/_ui/field/TextField";
import { openThisCount } from "@/app/(workspace)/counts/actions";

interface OpenCountProps {
  readonly sites: readonly { readonly id: string; readonly code: string; readonly name: string }[];
}

const BOOK = [
  { value: "blind", label: "Hidden: whoever counts does not see it" },
  { value: "shown", label: "Shown beside each lot" },
] as const;

/** Differences worth more together than this ask for a second person, unless another limit is written. */
const USUAL_LIMIT = "1000";

/** Opens a sheet and goes to it. */
export function OpenCount({ sites }: OpenCountProps) {
  const router = useRouter();
  return (
    <EntryForm
      submit="Open the count"
      save={(text) =>
        openThisCount({
          ...{ siteId: text("siteId"), bins: text("bins"), limitEuro: text("limitEuro") },
          blind: text("book") === "blind",
        })
      }
      onSaved={({ countId }) => router.push(`/counts/${countId}`)}
    >
      {(errorOf) => (
        <div className="grid gap-4 sm:grid-cols-2 lg:grid-cols-4">
          <SelectField
            name="siteId"
            label="Site"
            required
            {...(sites.length === 1 ? {} : { empty: "Choose a site" })}
            choices={sites.map(({ id, code, name }) => ({ value: id, label: `${code} ${name}` }))}
            error={errorOf("siteId")}
          />
          <TextField
            name="bins"
            label="Bins that begin with"
            hint="Empty counts the whole store."
            error={errorOf("bins")}
          />
          <SelectField name="book" label="The book" required choices={BOOK} error={errorOf("blind")} />
          <TextField
            name="limitEuro"
            label="Second person above, EUR"
            hint="Differences worth more together; own choice of the product."
            required
            defaultValue={USUAL_LIMIT}
            error={errorOf("limitEuro")}
          />
        </div>
      )}
    </EntryForm>
  );
}
