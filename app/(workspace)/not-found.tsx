import { EmptyState } from "@/app/_ui/EmptyState";
import { LinkButton } from "@/app/_ui/LinkButton";

export default function NotFound() {
  return (
    <EmptyState title="There is nothing here" actions={<LinkButton href="/lines">To the lines</LinkButton>}>
      The address may be misspelt, the thing may have been taken back, or your role may not cover its site.
    </EmptyState>
  );
}
