import { type ReactNode, useState } from "react";
import { Popover } from "react-aria-components";

interface HeaderPopoverProps {
  readonly className?: string;
  readonly children: ReactNode;
}

/** A popover drawn where it stands, so that its content lies in the header's landmark and not outside all. */
export function HeaderPopover({ className = "", children }: HeaderPopoverProps) {
  const [place, setPlace] = useState<HTMLDivElement | null>(null);
  return (
    <>
      <div ref={setPlace} />
      <Popover
        className={`popover ${className}`}
        placement="bottom end"
        {...(place ? { UNSTABLE_portalContainer: place } : {})}
      >
        {children}
      </Popover>
    </>
  );
}
