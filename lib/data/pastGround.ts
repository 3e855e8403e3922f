import "server-only";
import type { Actor } from "@/lib/access/actor";
import { pastBasis } from "@/lib/data/group/pastBasis";
import { lookedBackTo, readKnownFrom } from "@/lib/data/lookBack";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { isBefore } from "@/lib/view/knownAt";

/** What the figures of a look back are computed from; `nothing`: how the records stood then is not known. */
export type PastGround = "records" | "snapshot" | "nothing";

/** From what the figures on the screen are computed; null where nobody looks back. */
export async function readPastGround(actor: Actor, asOf: IsoDate): Promise<PastGround | null> {
  const known = lookedBackTo();
  if (known === null) return null;
  const { kind } = await pastBasis(asOf);
  if (kind === "snapshot") return "snapshot";
  return isBefore(known, await readKnownFrom(actor)) ? "nothing" : "records";
}
