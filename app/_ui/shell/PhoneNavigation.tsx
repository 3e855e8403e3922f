"use client";

import { useState } from "react";
import { Button, Dialog, DialogTrigger, Popover } from "react-aria-components";
import { NavigationList } from "@/app/_ui/shell/NavigationList";
import type { NavigationItem } from "@/app/_ui/shell/navigation";

/** The areas behind one button, where there is no room for the rail. */
export function PhoneNavigation({ items }: { readonly items: readonly NavigationItem[] }) {
  const [open, setOpen] = useState(false);
  return (
    <DialogTrigger isOpen={open} onOpenChange={setOpen}>
      <Button className="button">Menu</Button>
      <Popover className="popover w-64" placement="bottom end">
        <Dialog className="py-2 outline-none" aria-label="Menu">
          <NavigationList items={items} onFollow={() => setOpen(false)} />
        </Dialog>
      </Popover>
    </DialogTrigger>
  );
}
