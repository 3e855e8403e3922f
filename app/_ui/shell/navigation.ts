export interface NavigationItem {
  readonly label: string;
  readonly href: string;
}

/** Whether a page lies under an item: its own page or one below it. */
export function isCurrent(href: string, pathname: string): boolean {
  return pathname === href || pathname.startsWith(`${href}/`);
}
