"use client";

import type Link from "next/link";
import { useSearchParams } from "next/navigation";
import type { ComponentProps } from "react";
import { Anchor } from "@/app/_ui/Anchor";
import { keepAsOf } from "@/lib/view/keepAsOf";
import { KNOWN } from "@/lib/view/knownAt";

type AsOfLinkProps = Omit<ComponentProps<typeof Link>, "href"> & { readonly href: string };

/** A link inside the application that keeps the days of the page it stands on. */
export function AsOfLink({ href, ...rest }: AsOfLinkProps) {
  const params = useSearchParams();
  const kept = keepAsOf(href, params.get("asOf"), params.get(KNOWN));
  return <Anchor prefetch={false} {...rest} href={kept} />;
}
