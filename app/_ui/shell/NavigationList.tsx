"use client";

import { usePathname } from "next/navigation";
import { AsOfLink } from "@/app/_ui/AsOfLink";
import { isCurrent, type NavigationItem } from "@/app/_ui/shell/navigation";

interface NavigationListProps {
  readonly items: readonly NavigationItem[];
  readonly onFollow?: () => void;
}

/** The areas of the application; the one shown carries a heavy rule. */
export function NavigationList({ items, onFollow }: NavigationListProps) {
  const pathname = usePathname();
  return (
    <nav aria-label="Areas">
      <ul>
        {items.map(({ label, href, covers = [] }) => (
          <li key={href}>
            <AsOfLink
              href={href}
              {...(onFollow ? { onClick: onFollow } : {})}
              aria-current={isCurrent({ href, covers }, pathname) ? "page" : undefined}
              className="flex min-h-9 items-center border-transparent border-l-4 pr-3 pl-4 text-ink-2 no-underline hover:bg-shade hover:text-ink aria-[current]:border-ink aria-[current]:font-semibold aria-[current]:text-ink max-lg:min-h-12"
            >
              {label}
            </AsOfLink>
          </li>
        ))}
      </ul>
    </nav>
  );
}
