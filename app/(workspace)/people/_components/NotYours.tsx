import { PageHeader } from "@/app/_ui/PageHeader";

/** What those see who do not rule the accounts. */
export function NotYours() {
  return (
    <PageHeader
      title="People"
      lead="Only an administrator of all sites sees who has an account and says who may do what. Your own roles stand in the account menu at the top; ask an administrator if they should change."
    />
  );
}
