"use client";

import { usePathname } from "next/navigation";
import { AsOfLink } from "@/app/_ui/AsOfLink";
import { SaveLinks } from "@/app/_ui/SaveLinks";

/** A list that is saved as a file, and the page that shows it. */
export interface SavedHere {
  readonly name: string;
  readonly title: string;
  readonly page: string;
}

/** At the foot of a page: its lists as files. Nothing where a page shows none. */
export function SavePage({ lists }: { readonly lists: readonly SavedHere[] }) {
  const pathname = usePathname();
  const here = lists.filter(({ page }) => page === pathname);
  if (here.length === 0 || pathname === "/export") return null;
  return (
    <details className="disclosure border-rule-2 border-t pt-2">
      <summary className="min-h-8 text-ink-2 max-sm:min-h-11">Save as a file</summary>
      <ul className="mt-1 grid max-w-2xl gap-x-6 text-sm">
        {here.map(({ name, title }) => (
          <li key={name} className="flex flex-wrap items-center justify-between gap-x-6 border-rule border-b">
            <span>{title}</span>
            <SaveLinks name={name} title={title} />
          </li>
        ))}
      </ul>
      <p className="mt-2 text-sm">
        <AsOfLink href="/export">Everything that can be saved</AsOfLink>
      </p>
    </details>
  );
}
