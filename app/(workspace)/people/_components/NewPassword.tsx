import { Dialog } from "@/app/_ui/Dialog";
import { FormMessage } from "@/app/_ui/FormMessage";
import { CheckboxField } from "@/app/_ui/field/CheckboxField";
import { SelectField } from "@/app/_ui/field/SelectField";
import { SubmitButton } from "@/app/_ui/SubmitButton";
import { MadeLink } from "@/app/(workspace)/_components/MadeLink";
import { useLinkForm } from "@/app/(workspace)/_components/useLinkForm";
import { linkThisPassword } from "@/app/(workspace)/people/actions";
import type { Person } from "@/lib/data/people";
import { LINK_DAYS, linkDays } from "@/lib/view/linkDays";

/** The button that makes a one-time link for somebody who lost the password, and the link, shown this once. */
export function NewPassword({ person }: { readonly person: Person }) {
  return (
    <Dialog trigger="New password" kind="quiet" title={`New password of ${person.name}`}>
      {() => <LinkForm person={person} />}
    </Dialog>
  );
}

function LinkForm({ person: { userId } }: { readonly person: Person }) {
  const { made, refusal, pending, send } = useLinkForm((data) =>
    linkThisPassword({
      ...{ userId, days: linkDays(String(data.get("days"))), dropsFactor: data.has("dropsFactor") },
    }),
  );
  if (made) return <MadeLink {...made} />;
  return (
    <form noValidate onSubmit={send} className="grid gap-4">
      <p className="measure">
        Be sure who asks: whoever has the link has the account. Until it is followed the present password
        holds; then every session of this person ends.
      </p>
      <SelectField label="The link opens for" name="days" required choices={LINK_DAYS} defaultValue="3" />
      <CheckboxField label="The second factor is lost too: put it off" name="dropsFactor" />
      <FormMessage kind="problem">{refusal?.reason}</FormMessage>
      <div>
        <SubmitButton pending={pending} pendingText="Making the link…">
          Make the link
        </SubmitButton>
      </div>
    </form>
  );
}
