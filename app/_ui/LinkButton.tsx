import type { ReactNode } from "react";
import { AsOfLink } from "@/app/_ui/AsOfLink";
import type { ButtonKind } from "@/app/_ui/Button";

interface LinkButtonProps {
  readonly href: string;
  readonly kind?: ButtonKind;
  /** A file to fetch, not a page: no client navigation. */
  readonly download?: boolean;
  readonly children: ReactNode;
}

/** A link that looks like a button; keeps the as-of day. */
export function LinkButton({ href, kind = "plain", download = false, children }: LinkButtonProps) {
  if (download)
    return (
      <a href={href} data-kind={kind} className="button" download>
        {children}
      </a>
    );
  return (
    <AsOfLink href={href} data-kind={kind} className="button">
      {children}
    </AsOfLink>
  );
}
