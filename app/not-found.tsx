import { LinkButton } from "@/app/_ui/LinkButton";
import { PageHeader } from "@/app/_ui/PageHeader";
import { titled } from "@/app/_ui/titled";

export const generateMetadata = titled("There is nothing here");

/** For an address no page has. */
export default function NoSuchPage() {
  return (
    <main className="mx-auto max-w-3xl px-4 py-12">
      <PageHeader
        title="There is nothing here"
        lead="No page has this address. It may be misspelt, or cut where it was copied."
        actions={<LinkButton href="/lines">To the lines</LinkButton>}
      />
    </main>
  );
}
