"use client";

import { NavigationList } from "@/app/_ui/shell/NavigationList";
import type { NavigationItem } from "@/app/_ui/shell/navigation";
import { PopoverButton } from "@/app/_ui/shell/PopoverButton";

/** The areas behind one button, where there is no room for the rail. */
export function PhoneNavigation({ items }: { readonly items: readonly NavigationItem[] }) {
  return (
    <PopoverButton button="Menu" label="Menu" popoverClass="w-64" panelClass="py-2">
      {(close) => <NavigationList items={items} onFollow={close} />}
    </PopoverButton>
  );
}
