import { AsOfLink } from "@/app/_ui/AsOfLink";

export interface Tab {
  readonly label: string;
  readonly href: string;
  readonly current: boolean;
  /** A count behind the label. */
  readonly count?: number;
}

interface TabsProps {
  /** Name of the group for screen readers, e.g. `Parts of the line dossier`. */
  readonly label: string;
  readonly tabs: readonly Tab[];
}

/** Views of one thing, each with an address of its own. */
export function Tabs({ label, tabs }: TabsProps) {
  return (
    <nav aria-label={label} className="no-print mb-5 overflow-x-auto border-rule-2 border-b">
      <ul className="flex gap-6">
        {tabs.map(({ label: text, href, current, count }) => (
          <li key={href}>
            <AsOfLink
              href={href}
              scroll={false}
              aria-current={current ? "page" : undefined}
              className="-mb-px inline-flex min-h-10 items-center gap-1.5 whitespace-nowrap border-transparent border-b-[3px] text-ink-2 no-underline hover:text-ink aria-[current]:border-ink aria-[current]:font-semibold aria-[current]:text-ink max-sm:min-h-11"
            >
              {text}
              {count === undefined ? null : <span className="font-normal text-ink-2 text-sm">{count}</span>}
            </AsOfLink>
          </li>
        ))}
      </ul>
    </nav>
  );
}
