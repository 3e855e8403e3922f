"use client";

import type { ReactNode } from "react";
import { AloneKeysSwitch } from "@/app/_ui/keys/AloneKeysSwitch";
import { PopoverButton } from "@/app/_ui/shell/PopoverButton";
import { ThemeSwitch } from "@/app/_ui/theme/ThemeSwitch";
import type { Theme } from "@/app/_ui/theme/theme";

interface UserMenuProps {
  readonly name: string;
  /** What the person may do and where, e.g. `Planner at VEL`. */
  readonly role: string;
  readonly theme: Theme | null;
  /** Sign out and whatever else belongs to the account. */
  readonly children?: ReactNode;
}

/** The signed-in person: who, in what role, the theme, sign out. */
export function UserMenu({ name, role, theme, children }: UserMenuProps) {
  return (
    <PopoverButton
      button={
        <span translate="no" className="truncate">
          {name}
        </span>
      }
      buttonLabel={`Account of ${name}`}
      buttonClass="max-w-48"
      kind="quiet"
      label="Account"
      panelClass="grid min-w-64 gap-4 p-4"
    >
      {() => (
        <>
          <div>
            <p translate="no" className="font-semibold">
              {name}
            </p>
            <p className="text-ink-2 text-sm">{role}</p>
          </div>
          <ThemeSwitch theme={theme} />
          <AloneKeysSwitch />
          {children}
        </>
      )}
    </PopoverButton>
  );
}
