"use client";

import type { ReactNode } from "react";
import { Button, Dialog, DialogTrigger } from "react-aria-components";
import { HeaderPopover } from "@/app/_ui/shell/HeaderPopover";
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
    <DialogTrigger>
      <Button className="button max-w-48" data-kind="quiet" aria-label={`Account of ${name}`}>
        <span className="truncate">{name}</span>
      </Button>
      <HeaderPopover>
        <Dialog className="grid min-w-64 gap-4 p-4 outline-none" aria-label="Account">
          <div>
            <p className="font-semibold">{name}</p>
            <p className="text-ink-2 text-sm">{role}</p>
          </div>
          <ThemeSwitch theme={theme} />
          {children}
        </Dialog>
      </HeaderPopover>
    </DialogTrigger>
  );
}
