"use client";

import { usePathname, useSearchParams } from "next/navigation";
import { Anchor } from "@/app/_ui/Anchor";
import type { SiteName } from "@/lib/data/siteNames";
import { DATE_WINDOWS, type DateChoice } from "@/lib/view/dateChoice";

interface WindowChoiceProps extends Pick<DateChoice, "within" | "site"> {
  readonly sites: readonly SiteName[];
}

interface ChoiceListProps {
  readonly label: string;
  readonly choices: readonly { readonly text: string; readonly href: string; readonly chosen: boolean }[];
}

/** How far ahead and at which site; both stand in the address. */
export function WindowChoice({ within, site, sites }: WindowChoiceProps) {
  const path = usePathname();
  const params = useSearchParams();
  const hrefOf = (name: string, value: string | null) => {
    const next = new URLSearchParams(params);
    if (value === null) next.delete(name);
    else next.set(name, value);
    return `${path}?${next}`;
  };
  const everywhere = { text: "All sites", href: hrefOf("site", null), chosen: site === null };
  return (
    <div className="no-print mb-4 flex flex-wrap gap-x-6 gap-y-2">
      <ChoiceList
        label="How far ahead"
        choices={DATE_WINDOWS.map((days) => ({
          text: days === null ? "All" : `${days} days`,
          href: hrefOf("within", days === null ? "all" : String(days)),
          chosen: days === within,
        }))}
      />
      {sites.length < 2 ? null : (
        <ChoiceList
          label="Site"
          choices={[
            everywhere,
            ...sites.map(({ code }) => ({ text: code, href: hrefOf("site", code), chosen: code === site })),
          ]}
        />
      )}
    </div>
  );
}

function ChoiceList({ label, choices }: ChoiceListProps) {
  return (
    <nav aria-label={label} className="flex flex-wrap">
      {choices.map(({ text, href, chosen }) => (
        <Anchor
          key={text}
          href={href}
          replace
          scroll={false}
          prefetch={false}
          className="button"
          data-kind={chosen ? "primary" : "plain"}
          aria-current={chosen ? "true" : undefined}
        >
          {text}
        </Anchor>
      ))}
    </nav>
  );
}
