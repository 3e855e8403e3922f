"use client";

import { lazy, Suspense, useState } from "react";
import type { ButtonKind } from "@/app/_ui/Button";
import type { DialogPanelProps } from "@/app/_ui/DialogPanel";

const load = () => import("@/app/_ui/DialogPanel");
/** Fetched when somebody comes near the button: no page needs it to be read. */
const DialogPanel = lazy(() => load().then((part) => ({ default: part.DialogPanel })));

interface DialogProps extends Pick<DialogPanelProps, "title" | "children"> {
  /** Text of the button that opens it. */
  readonly trigger: string;
  /** What it says to who hears it, where its text is not enough; begins with that text. */
  readonly triggerLabel?: string;
  readonly kind?: ButtonKind;
  readonly wide?: boolean;
}

/** A button and the dialog it opens. Used from client components, because its content is a function. */
export function Dialog({
  trigger,
  triggerLabel,
  kind = "plain",
  title,
  wide = false,
  children,
}: DialogProps) {
  const [open, setOpen] = useState(false);
  return (
    <>
      <button
        type="button"
        className="button"
        data-kind={kind}
        aria-label={triggerLabel}
        aria-haspopup="dialog"
        onPointerEnter={load}
        onFocus={load}
        onClick={() => setOpen(true)}
      >
        {trigger}
      </button>
      {open ? (
        <Suspense fallback={null}>
          <DialogPanel {...{ title, wide, children }} onClose={() => setOpen(false)} />
        </Suspense>
      ) : null}
    </>
  );
}
