import "server-only";
import { headers } from "next/headers";
import type { ReactNode } from "react";
import { signedInActor } from "@/lib/access/actor";
import { lookBack } from "@/lib/data/lookBack";
import { KNOWN, readKnownAt } from "@/lib/view/knownAt";

interface Looked {
  readonly searchParams: Promise<{ readonly known?: string | string[] }>;
}

/**
 * A page that can look back: where its address names an instant, everything it reads is as it stood then, and whoever
 * reads it can change nothing.
 *
 * What a page reads must be read in the page itself, not in a part that the server renders later.
 */
export function lookingBack<P extends object>(page: (props: P) => Promise<ReactNode>) {
  return async (props: P & Looked): Promise<ReactNode> => {
    const { known } = await props.searchParams;
    const at = readKnownAt(typeof known === "string" ? known : null);
    if (at === null) return page(props);
    // Who asks is found out before, and as of now: rights are not looked back to.
    await signedInActor();
    return lookBack(at, () => page(props));
  };
}

/** Whether the request was sent from a page that looks back. */
export async function sentFromThePast(): Promise<boolean> {
  const from = (await headers()).get("referer");
  return from !== null && URL.canParse(from) && readKnownAt(new URL(from).searchParams.get(KNOWN)) !== null;
}
