"use client";

import { usePathname } from "next/navigation";
import { useEffect, useState } from "react";
import { Button, Dialog, DialogTrigger, Heading, Modal, ModalOverlay } from "react-aria-components";
import { HelpContent } from "@/app/_ui/shell/HelpContent";
import type { HelpText } from "@/lib/view/help/helpText";

/** What the page is for and how to read it; `?` opens it, and it reads its words only then. */
export function HelpButton() {
  const pathname = usePathname();
  const [open, setOpen] = useState(false);
  const [help, setHelp] = useState<HelpText | null>(null);

  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      if (event.key !== "?" || event.ctrlKey || event.metaKey || event.altKey || isTyping(event.target))
        return;
      event.preventDefault();
      setOpen(true);
    };
    window.addEventListener("keydown", press);
    return () => window.removeEventListener("keydown", press);
  }, []);

  useEffect(() => {
    if (!open) return;
    let wanted = true;
    void import("@/lib/view/help/helpOf").then(({ helpOf }) => {
      if (wanted) setHelp(helpOf(pathname));
    });
    return () => {
      wanted = false;
    };
  }, [open, pathname]);

  return (
    <DialogTrigger isOpen={open} onOpenChange={setOpen}>
      <Button className="button" data-kind="quiet" aria-keyshortcuts="?">
        Help
      </Button>
      <ModalOverlay className="backdrop" isDismissable>
        <Modal className="w-full max-w-xl border border-ink-2 bg-sheet text-ink">
          <Dialog className="max-h-[85dvh] overflow-y-auto outline-none">
            <div className="flex items-start justify-between gap-4 border-rule border-b px-5 py-3">
              <Heading slot="title" className="font-semibold text-xl">
                {help?.title ?? "Help"}
              </Heading>
              <Button slot="close" className="button" data-kind="quiet">
                Close
              </Button>
            </div>
            <HelpContent help={help} onFollow={() => setOpen(false)} />
          </Dialog>
        </Modal>
      </ModalOverlay>
    </DialogTrigger>
  );
}

const isTyping = (target: EventTarget | null) =>
  target instanceof HTMLElement &&
  (target.isContentEditable || /^(INPUT|TEXTAREA|SELECT)$/.test(target.tagName));
