import { AsOfLink } from "@/app/_ui/AsOfLink";

export interface Crumb {
  readonly label: string;
  readonly href: string;
}

/** Where the page stands: the pages above it, without the page itself. Goes into `PageHeader above`. */
export function Breadcrumbs({ crumbs }: { readonly crumbs: readonly Crumb[] }) {
  return (
    <nav aria-label="Where you are">
      <ol className="flex flex-wrap gap-x-2">
        {crumbs.map(({ label, href }) => (
          <li key={href} className="after:ml-2 after:text-ink-3 after:content-['/']">
            <AsOfLink href={href}>{label}</AsOfLink>
          </li>
        ))}
      </ol>
    </nav>
  );
}
