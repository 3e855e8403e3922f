import { LinkButton } from "@/app/_ui/LinkButton";
import { PageHeader } from "@/app/_ui/PageHeader";

export default function NotFound() {
  return (
    <PageHeader
      title="There is nothing here"
      lead="The address may be misspelt, the thing may have been taken back, or your role may not cover its site."
      actions={<LinkButton href="/lines">To the lines</LinkButton>}
    />
  );
}
