import { EmptyState } from "@/app/_ui/EmptyState";
import { LinkButton } from "@/app/_ui/LinkButton";
import { PageHeader } from "@/app/_ui/PageHeader";
import type { IsoDate } from "@/lib/kernel/isoDate";

/** Stands where the report would stand while nothing is known of any site. */
export function NoReport({ asOf }: { readonly asOf: IsoDate }) {
  return (
    <>
      <PageHeader title="Monthly report" asOf={asOf} />
      <EmptyState title="Nothing to report yet" actions={<LinkButton href="/lines">To the lines</LinkButton>}>
        The report is made from the lines, spares and projects of your sites. It stands here, ready to print,
        as soon as registers are loaded.
      </EmptyState>
    </>
  );
}
