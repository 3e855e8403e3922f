import { type ReactNode, type RefObject, useState } from "react";
import { Dialog, Popover } from "react-aria-components";

export interface HeaderPopoverProps {
  /** What the popover stands at and gives the focus back to. */
  readonly trigger: RefObject<HTMLButtonElement | null>;
  readonly label: string;
  readonly className?: string | undefined;
  readonly panelClass: string;
  readonly onClose: () => void;
  readonly children: ReactNode;
}

/** A popover drawn where it stands, so that its content lies in the header's landmark and not outside all. */
export function HeaderPopover({ trigger, label, className = "", ...rest }: HeaderPopoverProps) {
  const { panelClass, onClose, children } = rest;
  const [place, setPlace] = useState<HTMLDivElement | null>(null);
  return (
    <>
      <div ref={setPlace} />
      {place === null ? null : (
        <Popover
          className={`popover ${className}`}
          placement="bottom end"
          triggerRef={trigger}
          isOpen
          onOpenChange={(open) => (open ? undefined : onClose())}
          UNSTABLE_portalContainer={place}
        >
          <Dialog className={`${panelClass} outline-none`} aria-label={label}>
            {children}
          </Dialog>
        </Popover>
      )}
    </>
  );
}
