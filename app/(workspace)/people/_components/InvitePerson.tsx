import { type FormEvent, useState } from "react";
import { Dialog } from "@/app/_ui/Dialog";
import { FormMessage } from "@/app/_ui/FormMessage";
import { SelectField } from "@/app/_ui/field/SelectField";
import { TextField } from "@/app/_ui/field/TextField";
import { SubmitButton } from "@/app/_ui/SubmitButton";
import { MadeLink } from "@/app/(workspace)/_components/MadeLink";
import { useLinkForm } from "@/app/(workspace)/_components/useLinkForm";
import { RoleEntries } from "@/app/(workspace)/people/_components/RoleEntries";
import { invite } from "@/app/(workspace)/people/actions";
import type { ProjectName } from "@/lib/data/projectNames";
import type { SiteName } from "@/lib/data/siteNames";
import { LINK_DAYS, linkDays } from "@/lib/view/linkDays";
import { FRESH_ENTRY, grantRoles, lackOf, type RoleEntry } from "@/lib/view/roleEntry";

interface InvitePersonProps {
  readonly sites: readonly SiteName[];
  readonly projects: readonly ProjectName[];
}

/** The button that invites somebody by a one-time link, its form, and the link, shown this once. */
export function InvitePerson(props: InvitePersonProps) {
  return (
    <Dialog trigger="Invite by a link" title="Invite somebody">
      {() => <InviteForm {...props} />}
    </Dialog>
  );
}

function InviteForm({ sites, projects }: InvitePersonProps) {
  const [entries, setEntries] = useState<readonly RoleEntry[]>([FRESH_ENTRY]);
  const [checked, setChecked] = useState(false);
  const { made, refusal, pending, send, problem } = useLinkForm((data) => {
    const text = (name: string) => String(data.get(name) ?? "").trim();
    const wanted = { name: text("name"), email: text("email"), days: linkDays(text("days")) };
    return invite({ ...wanted, grants: grantRoles(entries) });
  });
  const check = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    setChecked(true);
    if (entries.every((entry) => lackOf(entry) === null)) send(event);
  };
  if (made) return <MadeLink {...made} />;
  return (
    <form noValidate onSubmit={check} className="grid gap-4">
      <TextField label="Name" name="name" required autoComplete="off" error={problem("name")} />
      <TextField
        label="E-mail"
        name="email"
        type="email"
        required
        autoComplete="off"
        error={problem("email")}
      />
      <SelectField label="The link opens for" name="days" required choices={LINK_DAYS} defaultValue="7" />
      <RoleEntries {...{ sites, projects, entries, checked }} onChange={setEntries} />
      <FormMessage kind="problem">{problem("grants") ?? refusal?.reason}</FormMessage>
      <div>
        <SubmitButton pending={pending} pendingText="Inviting…">
          Invite
        </SubmitButton>
      </div>
    </form>
  );
}
