import { type FormEvent, useState, useTransition } from "react";
import { Dialog } from "@/app/_ui/Dialog";
import { FormMessage } from "@/app/_ui/FormMessage";
import { Notice } from "@/app/_ui/Notice";
import { SubmitButton } from "@/app/_ui/SubmitButton";
import { RoleEntries } from "@/app/(workspace)/people/_components/RoleEntries";
import { saveRoles } from "@/app/(workspace)/people/actions";
import type { Person } from "@/lib/data/people";
import type { ProjectName } from "@/lib/data/projectNames";
import type { SiteName } from "@/lib/data/siteNames";
import { gatherRoles, grantRoles, lackOf, type RoleEntry } from "@/lib/view/roleEntry";

interface ChangeRolesProps {
  readonly person: Person;
  readonly sites: readonly SiteName[];
  readonly projects: readonly ProjectName[];
  readonly isOwn: boolean;
  readonly onSaved: () => void;
}

/** The button that changes what a person may do where, and its form. */
export function ChangeRoles({ onSaved, ...rest }: ChangeRolesProps) {
  return (
    <Dialog trigger="Change roles" kind="quiet" title={`Roles of ${rest.person.name}`}>
      {(close) => (
        <RolesForm
          {...rest}
          onSaved={() => {
            close();
            onSaved();
          }}
        />
      )}
    </Dialog>
  );
}

function RolesForm({ person, sites, projects, isOwn, onSaved }: ChangeRolesProps) {
  const [entries, setEntries] = useState<readonly RoleEntry[]>(() => gatherRoles(person.grants));
  const [checked, setChecked] = useState(false);
  const [reason, setReason] = useState("");
  const [pending, start] = useTransition();
  const send = (event: FormEvent) => {
    event.preventDefault();
    setChecked(true);
    setReason("");
    if (entries.some((entry) => lackOf(entry) !== null)) return;
    start(async () => {
      const answer = await saveRoles({ userId: person.userId, grants: grantRoles(entries) });
      if (answer.ok) onSaved();
      else setReason(answer.error.reason);
    });
  };
  return (
    <form noValidate onSubmit={send} className="grid gap-4">
      {isOwn ? (
        <Notice kind="caution">
          These are your own roles. Without Administrator at all sites you no longer see this page and cannot
          take it back.
        </Notice>
      ) : null}
      <RoleEntries {...{ sites, projects, entries, checked }} onChange={setEntries} />
      <FormMessage kind="problem">{reason}</FormMessage>
      <div>
        <SubmitButton pending={pending}>Save roles</SubmitButton>
      </div>
    </form>
  );
}
