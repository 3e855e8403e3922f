import { type FormEvent, useState, useTransition } from "react";
import { Dialog } from "@/app/_ui/Dialog";
import { FormMessage } from "@/app/_ui/FormMessage";
import { TextField } from "@/app/_ui/field/TextField";
import { SubmitButton } from "@/app/_ui/SubmitButton";
import { RoleEntries } from "@/app/(workspace)/people/_components/RoleEntries";
import { makeAccount } from "@/app/(workspace)/people/actions";
import type { Refusal } from "@/lib/access/action";
import type { ProjectName } from "@/lib/data/projectNames";
import type { SiteName } from "@/lib/data/siteNames";
import { FRESH_ENTRY, grantRoles, lackOf, type RoleEntry } from "@/lib/view/roleEntry";

interface AddPersonProps {
  readonly sites: readonly SiteName[];
  readonly projects: readonly ProjectName[];
  readonly onAdded: (name: string) => void;
}

/** The button that makes an account, and its form. */
export function AddPerson({ sites, projects, onAdded }: AddPersonProps) {
  return (
    <Dialog trigger="Add a person" kind="primary" title="Add a person">
      {(close) => (
        <PersonForm
          {...{ sites, projects }}
          onAdded={(name) => {
            close();
            onAdded(name);
          }}
        />
      )}
    </Dialog>
  );
}

function PersonForm({ sites, projects, onAdded }: AddPersonProps) {
  const [entries, setEntries] = useState<readonly RoleEntry[]>([FRESH_ENTRY]);
  const [checked, setChecked] = useState(false);
  const [refusal, setRefusal] = useState<Refusal | null>(null);
  const [pending, start] = useTransition();
  const send = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    setChecked(true);
    setRefusal(null);
    if (entries.some((entry) => lackOf(entry) !== null)) return;
    const data = new FormData(event.currentTarget);
    const text = (name: string) => String(data.get(name) ?? "");
    start(async () => {
      const answer = await makeAccount({
        name: text("name"),
        email: text("email").trim(),
        password: text("password"),
        grants: grantRoles(entries),
      });
      if (answer.ok) onAdded(text("name").trim());
      else setRefusal(answer.error);
    });
  };
  const problem = (name: string) => refusal?.fields?.[name];
  return (
    <form noValidate onSubmit={send} className="grid gap-4">
      <TextField label="Name" name="name" required autoComplete="off" error={problem("name")} />
      <TextField
        label="E-mail"
        name="email"
        type="email"
        required
        autoComplete="off"
        hint="The person signs in with it. Ebbline sends no e-mail."
        error={problem("email")}
      />
      <TextField
        label="First password"
        name="password"
        required
        autoComplete="off"
        spellCheck={false}
        hint="At least 12 characters, readable here so that you can tell it in person."
        error={problem("password")}
      />
      <RoleEntries {...{ sites, projects, entries, checked }} onChange={setEntries} />
      <FormMessage kind="problem">{problem("grants") ?? refusal?.reason}</FormMessage>
      <div>
        <SubmitButton pending={pending} pendingText="Making the account…">
          Make the account
        </SubmitButton>
      </div>
    </form>
  );
}
