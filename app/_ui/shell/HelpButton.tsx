"use client";

import { usePathname } from "next/navigation";
import { lazy, Suspense, useEffect, useState } from "react";
import { isAlone } from "@/app/_ui/keys/aloneKeys";
import { HelpContent } from "@/app/_ui/shell/HelpContent";
import type { HelpText } from "@/lib/view/help/helpText";

const load = () => import("@/app/_ui/DialogPanel");
/** Fetched when somebody comes near the button, or presses the key. */
const DialogPanel = lazy(() => load().then((part) => ({ default: part.DialogPanel })));

/** What the page is for and how to read it; `?` opens it, and it reads its words only then. */
export function HelpButton() {
  const pathname = usePathname();
  const [open, setOpen] = useState(false);
  const [help, setHelp] = useState<HelpText | null>(null);

  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      if (event.key !== "?" || !isAlone(event)) return;
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
    <>
      <button
        type="button"
        className="button"
        data-kind="quiet"
        aria-haspopup="dialog"
        aria-keyshortcuts="?"
        onPointerEnter={load}
        onFocus={load}
        onClick={() => setOpen(true)}
      >
        Help
      </button>
      {open ? (
        <Suspense fallback={null}>
          <DialogPanel title={help?.title ?? "Help"} wide={false} onClose={() => setOpen(false)}>
            {(close) => (
              <div className="max-h-[75dvh] overflow-y-auto">
                <HelpContent help={help} onFollow={close} />
              </div>
            )}
          </DialogPanel>
        </Suspense>
      ) : null}
    </>
  );
}
