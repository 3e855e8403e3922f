export interface NavigationItem {
  readonly label: string;
  readonly href: string;
  /** Addresses of further pages that belong to the item. */
  readonly covers?: readonly string[];
}

/** Whether a page lies under an item: one of its own pages or one below them. */
export function isCurrent({ href, covers = [] }: Omit<NavigationItem, "label">, pathname: string): boolean {
  return [href, ...covers].some((own) => pathname === own || pathname.startsWith(`${own}/`));
}
