import "server-only";
import type { Actor } from "@/lib/access/actor";
import { maySomewhere } from "@/lib/access/policy";
import { database } from "@/lib/data/client";
import { visibleBatches } from "@/lib/data/intake/batch";
import { siteIds } from "@/lib/data/scope";
import { partKey } from "@/lib/intake/readPartNumber";
import { type KnownNumber, keyParts, suggestParts } from "@/lib/intake/suggestParts";
import type { NamedPart, OpenNumber } from "@/lib/view/partNumbers";
import type { NumberVerdict } from "@/prisma/generated/client";

/** Names of files looked through at once; the rest comes up as these are settled. */
const MOST_NAMES = 5000;

export type LoadedPart = KnownNumber & { readonly description: string };

/** Every part that counts, with its other numbers as far as the actor may see them. */
export async function loadParts(actor: Actor): Promise<LoadedPart[]> {
  const seen = siteIds(actor, "read");
  const rows = await database().part.findMany({
    where: maySomewhere(actor.grants, "read") ? { mergedIntoId: null } : { id: { in: [] } },
    select: {
      ...{ id: true, maker: true, number: true, description: true, itemClass: true },
      family: { select: { name: true } },
      aliases: {
        where: seen ? { OR: [{ siteId: null }, { siteId: seen }] } : {},
        select: { alias: true, site: { select: { code: true } } },
      },
    },
    orderBy: [{ maker: "asc" }, { number: "asc" }],
  });
  return rows.map(({ family, itemClass, aliases, ...part }) => ({
    ...part,
    text: [itemClass.replace("_", " "), family?.name ?? "", part.description].join(" "),
    aliases: aliases.map(({ alias, site }) => ({ alias, siteCode: site?.code ?? null })),
  }));
}

export const nameOf = ({ id, maker, number, description }: NamedPart): NamedPart => ({
  id,
  maker,
  number,
  description,
});

interface SeenNumber {
  readonly written: string;
  readonly folded: string;
  /** The maker, as the file writes it. */
  readonly within: string;
  readonly siteCode: string;
  readonly detail: string;
  readonly rows: number;
  readonly batchId: string;
  readonly batch: { readonly fileName: string };
}

function seenNumbers(actor: Actor): Promise<SeenNumber[]> {
  return database().unmatchedName.findMany({
    where: { kind: "part", batch: { state: { in: ["staged", "committed"] }, ...visibleBatches(actor) } },
    select: {
      ...{
        written: true,
        folded: true,
        within: true,
        siteCode: true,
        detail: true,
        rows: true,
        batchId: true,
      },
      batch: { select: { fileName: true } },
    },
    orderBy: [{ rows: "desc" }, { id: "asc" }],
    take: MOST_NAMES,
  });
}

/** Numbers of the actor's files that nothing on record is called by now, those put off last. */
export async function findOpen(
  actor: Actor,
  parts: readonly LoadedPart[],
  verdicts: readonly NumberVerdict[],
): Promise<OpenNumber[]> {
  const known = new Set(
    parts.flatMap(({ number, aliases }) => [
      `\n${partKey(number)}`,
      ...aliases.map(({ alias, siteCode }) => `${siteCode ?? ""}\n${partKey(alias)}`),
    ]),
  );
  const groups = new Map<string, SeenNumber[]>();
  for (const seen of await seenNumbers(actor)) {
    if (known.has(`\n${seen.folded}`) || known.has(`${seen.siteCode}\n${seen.folded}`)) continue;
    const mark = [seen.folded, partKey(seen.within), seen.siteCode].join("\n");
    groups.set(mark, [...(groups.get(mark) ?? []), seen]);
  }
  const keyed = keyParts(parts);
  const names = new Map(parts.map((part) => [part.id, nameOf(part)]));
  const open = [...groups.values()].flatMap((group) => openNumber(group, { keyed, names, verdicts }));
  return open.sort((a, b) => Number(a.later) - Number(b.later) || b.rows - a.rows);
}

interface Around {
  readonly keyed: ReturnType<typeof keyParts>;
  readonly names: ReadonlyMap<string, NamedPart>;
  readonly verdicts: readonly NumberVerdict[];
}

/** One number of one maker at one site, unless a person said that it is none of the parts on record. */
function openNumber(group: readonly SeenNumber[], { keyed, names, verdicts }: Around): OpenNumber[] {
  const [first] = group;
  if (!first) return [];
  const said = verdicts.filter(({ key, maker }) => key === first.folded && maker === first.within);
  const others = said.filter(({ verdict }) => verdict === "other").map(({ partId }) => partId);
  if (others.includes(null)) return [];
  const { written, within: maker, siteCode, detail } = first;
  const suggestions = suggestParts({ written, maker, siteCode, detail }, keyed).flatMap((one) => {
    const part = names.get(one.partId);
    return part && !others.includes(one.partId) ? [{ ...part, score: one.score, why: one.why }] : [];
  });
  return [
    {
      ...{ written, maker, siteCode, detail, suggestions },
      rows: group.reduce((sum, row) => sum + row.rows, 0),
      files: [...new Map(group.map(({ batchId, batch }) => [batchId, batch.fileName]))].map(
        ([batchId, fileName]) => ({ batchId, fileName }),
      ),
      later: said.some(({ verdict }) => verdict === "later"),
    },
  ];
}
