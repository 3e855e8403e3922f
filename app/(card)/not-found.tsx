import { LinkButton } from "@/app/_ui/LinkButton";
import { PageHeader } from "@/app/_ui/PageHeader";

/** The same for a machine that is not there and one at a site the person may not see. */
export default function NotFound() {
  return (
    <main className="mx-auto max-w-3xl px-4 py-12">
      <PageHeader
        title="There is no such card at your sites"
        lead="The machine may have been removed, or it stands at a site you cannot see."
        actions={<LinkButton href="/installed">Installed</LinkButton>}
      />
    </main>
  );
}
