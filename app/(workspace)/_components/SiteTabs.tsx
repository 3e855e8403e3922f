import { Tabs } from "@/app/_ui/Tabs";
import type { SiteName } from "@/lib/data/siteNames";

interface SiteTabsProps {
  readonly sites: readonly SiteName[];
  readonly site: SiteName | null;
  /** Address of the page; the site is added. */
  readonly href: string;
  /** Word for all sites together; without it one site has to be chosen. */
  readonly all?: string;
}

/** One site of the person's, or all of them. */
export function SiteTabs({ sites, site, href, all }: SiteTabsProps) {
  if (sites.length < 2) return null;
  return (
    <Tabs
      label="Site"
      tabs={[
        ...(all === undefined ? [] : [{ label: all, href, current: site === null }]),
        ...sites.map(({ id, code }) => ({
          ...{ label: code, href: `${href}?site=${encodeURIComponent(code)}` },
          current: site?.id === id,
        })),
      ]}
    />
  );
}
