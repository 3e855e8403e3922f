import { Button } from "@/app/_ui/Button";
import { DateField } from "@/app/_ui/field/DateField";
import { SelectField } from "@/app/_ui/field/SelectField";
import { TextField } from "@/app/_ui/field/TextField";
import { LinkButton } from "@/app/_ui/LinkButton";
import type { AuditQuestion } from "@/lib/view/audit/auditEntry";
import { AREAS } from "@/lib/view/audit/deedWords";

const choices = Object.entries(AREAS)
  .map(([value, { title }]) => ({ value, label: title }))
  .sort((a, b) => a.label.localeCompare(b.label));

/** Narrows the changes; the choices stand in the address. */
export function AuditFilters({ question }: { readonly question: AuditQuestion }) {
  const { thing, who, area, from, until } = question;
  return (
    <form method="get" action="/audit" className="no-print mb-6 grid gap-4 sm:grid-cols-2 lg:grid-cols-4">
      {thing ? (
        <>
          <input type="hidden" name="of" value={thing.kind} />
          <input type="hidden" name="id" value={thing.id} />
        </>
      ) : null}
      <TextField label="Person" name="who" defaultValue={who ?? ""} hint="Part of a name." />
      <SelectField
        label="Kind of change"
        name="area"
        defaultValue={area ?? ""}
        empty="All"
        choices={choices}
      />
      <DateField label="From" name="from" defaultValue={from ?? ""} />
      <DateField label="Until" name="until" defaultValue={until ?? ""} />
      <div className="flex flex-wrap gap-2 sm:col-span-2 lg:col-span-4">
        <Button type="submit">Show</Button>
        <LinkButton href={thing ? `/audit?of=${thing.kind}&id=${thing.id}` : "/audit"}>
          All changes
        </LinkButton>
      </div>
    </form>
  );
}
