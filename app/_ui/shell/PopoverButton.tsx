"use client";

import { lazy, type ReactNode, Suspense, useRef, useState } from "react";
import type { ButtonKind } from "@/app/_ui/Button";
import type { HeaderPopoverProps } from "@/app/_ui/shell/HeaderPopover";

const load = () => import("@/app/_ui/shell/HeaderPopover");
/** Fetched when somebody comes near the button: no page needs it to be read. */
const HeaderPopover = lazy(() => load().then((part) => ({ default: part.HeaderPopover })));

interface PopoverButtonProps extends Pick<HeaderPopoverProps, "label" | "panelClass"> {
  readonly button: ReactNode;
  /** Said in place of what stands on the button. */
  readonly buttonLabel?: string;
  readonly buttonClass?: string;
  readonly kind?: ButtonKind;
  readonly popoverClass?: string;
  readonly children: (close: () => void) => ReactNode;
}

/** A button of the header and the popover it opens. */
export function PopoverButton(props: PopoverButtonProps) {
  const { button, buttonLabel, buttonClass = "", kind = "plain", popoverClass, label, panelClass } = props;
  const [open, setOpen] = useState(false);
  const trigger = useRef<HTMLButtonElement>(null);
  const close = () => setOpen(false);
  return (
    <>
      <button
        ref={trigger}
        type="button"
        data-kind={kind}
        className={`button ${buttonClass}`}
        aria-label={buttonLabel}
        aria-haspopup="dialog"
        aria-expanded={open}
        onPointerEnter={load}
        onFocus={load}
        onClick={() => setOpen(!open)}
      >
        {button}
      </button>
      {open ? (
        <Suspense fallback={null}>
          <HeaderPopover {...{ trigger, label, panelClass }} className={popoverClass} onClose={close}>
            {props.children(close)}
          </HeaderPopover>
        </Suspense>
      ) : null}
    </>
  );
}
