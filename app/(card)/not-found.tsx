import { EmptyState } from "@/app/_ui/EmptyState";
import { LinkButton } from "@/app/_ui/LinkButton";

/** The same for a machine that is not there and one at a site the person may not see. */
export default function NotFound() {
  return (
    <main className="mx-auto max-w-3xl p-4">
      <EmptyState
        title="There is no such card at your sites"
        actions={<LinkButton href="/installed">Installed</LinkButton>}
      >
        The machine may have been removed, or it stands at a site you cannot see.
      </EmptyState>
    </main>
  );
}
