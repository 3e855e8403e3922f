import { Breadcrumbs } from "@/app/_ui/Breadcrumbs";
import { PageHeader } from "@/app/_ui/PageHeader";
import { Tabs } from "@/app/_ui/Tabs";
import { binsWords, type CountSheet } from "@/lib/view/count";
import { plainNumber } from "@/lib/view/number";
import { day } from "@/lib/view/time";

interface CountHeadProps {
  readonly sheet: CountSheet;
  readonly asOf: string;
  readonly view: "sheet" | "variance";
  /** The differences are told with their value, so they open to whom amounts are shown. */
  readonly showsAmounts: boolean;
}

/** Which count it is, how far it is, and its two views. */
export function CountHead({ sheet, asOf, view, showsAmounts }: CountHeadProps) {
  const { id, siteCode, siteName, reference, bins, blind, lines, openedOn, openedBy } = sheet;
  const counted = lines.filter(({ entry }) => entry.found !== "").length;
  const state =
    sheet.postedOn === null
      ? `${plainNumber(counted)} of ${plainNumber(lines.length)} lines counted`
      : `posted on ${day(sheet.postedOn)} by ${sheet.postedBy}`;
  const address = `/counts/${id}`;
  return (
    <>
      <PageHeader
        title={`${siteCode} ${reference}`}
        asOf={asOf}
        lead={`${siteName}, ${binsWords(bins)}, book ${blind ? "hidden" : "shown"}; opened on ${day(openedOn)} by ${openedBy}; ${state}.`}
        above={<Breadcrumbs crumbs={[{ label: "Counts", href: "/counts" }]} />}
      />
      {sheet.mayPost && showsAmounts ? (
        <Tabs
          label="Views of the count"
          tabs={[
            { label: "Sheet", href: address, current: view === "sheet" },
            { label: "Differences", href: `${address}/variance`, current: view === "variance" },
          ]}
        />
      ) : null}
    </>
  );
}
