"use client";

import Link from "next/link";
import { useSearchParams } from "next/navigation";
import type { ComponentProps } from "react";
import { keepAsOf } from "@/lib/view/keepAsOf";

type AsOfLinkProps = Omit<ComponentProps<typeof Link>, "href"> & { readonly href: string };

/** A link inside the application that keeps the as-of day of the page it stands on. */
export function AsOfLink({ href, ...rest }: AsOfLinkProps) {
  const asOf = useSearchParams().get("asOf");
  return <Link prefetch={false} {...rest} href={keepAsOf(href, asOf)} />;
}
