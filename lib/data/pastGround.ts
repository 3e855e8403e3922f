import "server-only";
import type { Actor } from "@/lib/access/actor";
import { pastBasis } from "@/lib/data/group/pastBasis";
import { lookedBackTo } from "@/lib/data/lookBack";
import type { IsoDate } from "@/lib/kernel/isoDate";

/** What the figures of a look back are computed from. */
export type PastGround = "records" | "snapshot" | "oldest records";

/** From what the figures on the screen are computed; null where nobody looks back. */
export async function readPastGround(_actor: Actor, asOf: IsoDate): Promise<PastGround | null> {
  const at = lookedBackTo();
  if (at === null) return null;
  const { kind, keptSince } = await pastBasis(asOf);
  if (kind === "snapshot") return "snapshot";
  return keptSince !== null && at < keptSince ? "oldest records" : "records";
}
