import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { sites } from "@/lib/data/scope";
import type { ChangedInput } from "@/lib/risk/moved/changedInputs";
import type { MovedNames } from "@/lib/view/movedWords";

/** Names behind changed inputs, of what the actor may see. */
export async function readMovedNames(actor: Actor, inputs: readonly ChangedInput[]): Promise<MovedNames> {
  const parts = inputs.flatMap(({ poolId }) =>
    poolId !== null && !poolId.startsWith("unidentified:") ? [poolId] : [],
  );
  const families = inputs
    .filter(({ fact }) => fact === "familyId")
    .flatMap(({ before, after }) => [before, after])
    .filter((id) => typeof id === "string");
  const lines = inputs.flatMap(({ lineId }) => (lineId === null ? [] : [lineId]));
  const db = database();
  const [named, kin, places, there] = await Promise.all([
    db.part.findMany({ where: { id: { in: [...new Set(parts)] } }, select: { id: true, number: true } }),
    db.family.findMany({ where: { id: { in: [...new Set(families)] } }, select: { id: true, name: true } }),
    db.site.findMany({ where: sites(actor, "read"), select: { id: true, code: true } }),
    db.line.findMany({
      where: { id: { in: [...new Set(lines)] }, site: sites(actor, "read") },
      select: { id: true, code: true },
    }),
  ]);
  return {
    parts: Object.fromEntries(named.map(({ id, number }) => [id, number])),
    families: Object.fromEntries(kin.map(({ id, name }) => [id, name])),
    sites: Object.fromEntries(places.map(({ id, code }) => [id, code])),
    lines: Object.fromEntries(there.map(({ id, code }) => [id, code])),
  };
}
