"use client";

import { Dialog } from "@/app/_ui/Dialog";
import { FormMessage } from "@/app/_ui/FormMessage";
import { CheckboxField } from "@/app/_ui/field/CheckboxField";
import { DateField } from "@/app/_ui/field/DateField";
import { SelectField } from "@/app/_ui/field/SelectField";
import { TextField } from "@/app/_ui/field/TextField";
import { SubmitButton } from "@/app/_ui/SubmitButton";
import { MadeLink } from "@/app/(workspace)/_components/MadeLink";
import { useLinkForm } from "@/app/(workspace)/_components/useLinkForm";
import { inviteContractor } from "@/app/(workspace)/projects/actions";
import { LINK_DAYS, linkDays } from "@/lib/view/linkDays";

interface InviteContractorProps {
  readonly projectId: string;
  /** Last day of the work, as far as it is set. */
  readonly endsOn: string | null;
  /** Whether whoever invites sees amounts, and so may show them. */
  readonly mayShowAmounts: boolean;
}

/** The button that lets somebody from outside into this one project, and the link, shown this once. */
export function InviteContractor(props: InviteContractorProps) {
  return (
    <Dialog trigger="Invite a contractor" title="Invite a contractor into this project">
      {() => <InviteForm {...props} />}
    </Dialog>
  );
}

function InviteForm({ projectId, endsOn, mayShowAmounts }: InviteContractorProps) {
  const { made, refusal, pending, send, problem } = useLinkForm((data) =>
    inviteContractor(wishOf(projectId, data)),
  );
  if (made) return <MadeLink {...made} />;
  return (
    <form noValidate onSubmit={send} className="grid gap-4">
      <p className="measure">
        They see this project alone: its schedule, scope, axes, cutover and open points. Give them nothing
        they need not have.
      </p>
      <TextField label="Name" name="name" required autoComplete="off" error={problem("name")} />
      <TextField
        label="E-mail"
        name="email"
        type="email"
        required
        autoComplete="off"
        error={problem("email")}
      />
      <DateField
        label="Works in it until"
        name="endsOn"
        required
        hint="Last day, to its end in UTC."
        defaultValue={endsOn ?? ""}
        error={problem("grants.0.endsOn")}
      />
      <CheckboxField label="Records axis steps and axis checks" name="records" defaultChecked />
      {mayShowAmounts ? <CheckboxField label="Sees amounts of money there" name="amounts" /> : null}
      <SelectField label="The link opens for" name="days" required choices={LINK_DAYS} defaultValue="7" />
      <FormMessage kind="problem">{refusal?.reason}</FormMessage>
      <div>
        <SubmitButton pending={pending} pendingText="Inviting…">
          Invite
        </SubmitButton>
      </div>
    </form>
  );
}

function wishOf(projectId: string, data: FormData) {
  const text = (name: string) => String(data.get(name) ?? "").trim();
  const without = [
    ...(data.has("amounts") ? [] : (["money:read"] as const)),
    ...(data.has("records") ? [] : (["event:write"] as const)),
  ];
  const endsOn = text("endsOn") === "" ? null : text("endsOn");
  const grant = { role: "contractor" as const, siteId: null, projectId, endsOn, without };
  return { name: text("name"), email: text("email"), days: linkDays(text("days")), grants: [grant] };
}
