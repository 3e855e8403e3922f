"use client";

import { useState } from "react";
import { Button, Dialog, DialogTrigger } from "react-aria-components";
import { HeaderPopover } from "@/app/_ui/shell/HeaderPopover";
import { NavigationList } from "@/app/_ui/shell/NavigationList";
import type { NavigationItem } from "@/app/_ui/shell/navigation";

/** The areas behind one button, where there is no room for the rail. */
export function PhoneNavigation({ items }: { readonly items: readonly NavigationItem[] }) {
  const [open, setOpen] = useState(false);
  return (
    <DialogTrigger isOpen={open} onOpenChange={setOpen}>
      <Button className="button">Menu</Button>
      <HeaderPopover className="w-64">
        <Dialog className="py-2 outline-none" aria-label="Menu">
          <NavigationList items={items} onFollow={() => setOpen(false)} />
        </Dialog>
      </HeaderPopover>
    </DialogTrigger>
  );
}
