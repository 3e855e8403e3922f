import { AsOfLink } from "@/app/_ui/AsOfLink";

interface SiteChoiceProps {
  readonly sites: readonly { readonly code: string; readonly name: string }[];
  readonly chosen: string;
}

/** Whose review is shown; a single site needs no choice. */
export function SiteChoice({ sites, chosen }: SiteChoiceProps) {
  if (sites.length < 2) return null;
  return (
    <nav aria-label="Site of the review" className="no-print mb-6 flex flex-wrap gap-2">
      {sites.map(({ code, name }) => (
        <AsOfLink
          key={code}
          href={`/review?site=${encodeURIComponent(code)}`}
          className="button"
          aria-current={code === chosen ? "page" : undefined}
          title={name}
        >
          {code}
        </AsOfLink>
      ))}
    </nav>
  );
}
