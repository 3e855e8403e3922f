import "server-only";
import { headers } from "next/headers";
import type { ReactNode } from "react";
import { type Actor, signedInActor } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { lookBack } from "@/lib/data/lookBack";
import { readPastGround } from "@/lib/data/pastGround";
import { KNOWN, readKnownAt } from "@/lib/view/knownAt";

interface Looked {
  readonly searchParams: Promise<{
    readonly known?: string | string[];
    readonly asOf?: string | string[] | undefined;
  }>;
}

interface PageKind {
  /** The page shows figures alone, so that of a day whose records are not kept it can show a snapshot. */
  readonly snapshots?: boolean;
}

/**
 * A page that can look back: where its address names an instant, everything it reads is as it stood then, and whoever
 * reads it can change nothing. Where it is not known how that was, nothing is shown; the head of the page says since
 * when it is.
 *
 * What a page reads must be read in the page itself, not in a part that the server renders later.
 */
export function lookingBack<P extends object>(
  page: (props: P) => Promise<ReactNode>,
  { snapshots = false }: PageKind = {},
) {
  return async (props: P & Looked): Promise<ReactNode> => {
    const { known, asOf } = await props.searchParams;
    const at = readKnownAt(typeof known === "string" ? known : null);
    if (at === null) return page(props);
    // Who asks is found out before, and as of now: rights are not looked back to.
    const actor = await signedInActor({ amounts: "hidden" });
    return lookBack(at, async () => {
      const from = await groundOf(actor, typeof asOf === "string" ? asOf : undefined);
      return from === "records" || (from === "snapshot" && snapshots) ? page(props) : <NotKnown />;
    });
  };
}

const groundOf = async (actor: Actor, asOf: string | undefined) =>
  readPastGround(actor, await readAsOf(actor, asOf));

function NotKnown() {
  return <h1 className="font-semibold text-[1.75rem]">Not known</h1>;
}

/** Whether the request was sent from a page that looks back. */
export async function sentFromThePast(): Promise<boolean> {
  const from = (await headers()).get("referer");
  return from !== null && URL.canParse(from) && readKnownAt(new URL(from).searchParams.get(KNOWN)) !== null;
}
