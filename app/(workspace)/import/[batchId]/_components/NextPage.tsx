"use client";

import { usePathname, useSearchParams } from "next/navigation";
import { LinkButton } from "@/app/_ui/LinkButton";

interface Props {
  /** Name of the list in the address. */
  readonly list: "problems" | "changes" | "made";
  readonly next: string | null;
  readonly children: string;
}

/** The way to the next page of a long list, and back to its first. */
export function NextPage({ list, next, children }: Props) {
  const path = usePathname();
  const params = useSearchParams();
  const at = (value: string | null) => {
    const address = new URLSearchParams(params);
    if (value === null) address.delete(list);
    else address.set(list, value);
    return `${path}?${address}`;
  };
  return (
    <p className="mt-2 flex flex-wrap gap-2">
      {next === null ? null : <LinkButton href={at(next)}>{children}</LinkButton>}
      {params.has(list) ? <LinkButton href={at(null)}>Back to the first</LinkButton> : null}
    </p>
  );
}
