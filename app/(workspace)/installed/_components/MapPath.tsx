import { Breadcrumbs } from "@/app/_ui/Breadcrumbs";
import type { InstalledMap } from "@/lib/view/installed";

/** The steps above the level shown, from the group down. */
export function MapPath({ map: { site, line } }: { readonly map: InstalledMap }) {
  if (site === null) return null;
  const crumbs = [
    { label: "Installed", href: "/installed" },
    ...(line === null
      ? []
      : [{ label: `${site.code} ${site.name}`, href: `/installed?site=${encodeURIComponent(site.code)}` }]),
  ];
  return <Breadcrumbs crumbs={crumbs} />;
}
