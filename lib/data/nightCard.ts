import "server-only";
import type { Actor } from "@/lib/access/actor";
import { mayAt } from "@/lib/access/policy";
import { readCardEntries } from "@/lib/data/cardEntries";
import { database } from "@/lib/data/client";
import { assumptionsInUse } from "@/lib/data/group/assumptionsInUse";
import { type MachineQuestion, readMachine } from "@/lib/data/machine";
import { atSites } from "@/lib/data/scope";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { storageRules } from "@/lib/risk/storageRules";
import { usableCount } from "@/lib/spares/usableCount";
import { placesOf } from "@/lib/view/machine";
import type { CardPart, CardStock, NightCard } from "@/lib/view/nightCard";

/** What a breakdown at night needs of a machine; null when there is none or the actor may not see its site. */
export async function readNightCard(actor: Actor, question: MachineQuestion): Promise<NightCard | null> {
  const machine = await readMachine(actor, question);
  if (machine === null) return null;
  const { asOf } = question;
  const partIds = [...new Set(placesOf(machine).flatMap(({ part }) => part?.id ?? []))];
  const [parts, entries, { values }] = await Promise.all([
    readCardParts(actor, { partIds, asOf }),
    readCardEntries(actor, machine),
    assumptionsInUse(database()),
  ]);
  return {
    ...{ machine, parts, ...entries },
    transferHours: values.transferHours,
    madeAt: new Date().toISOString(),
  };
}

interface PartsQuestion {
  readonly partIds: readonly string[];
  readonly asOf: IsoDate;
}

const lots = { include: { site: { select: { code: true, name: true } } } };
const plain = { id: true, maker: true, number: true, itemClass: true };

/** The parts with what lies on the shelves of each and of what may stand in for it. */
async function readCardParts(actor: Actor, { partIds, asOf }: PartsQuestion): Promise<CardPart[]> {
  const [parts, { values }] = await Promise.all([
    database().part.findMany({
      where: { id: { in: [...partIds] } },
      orderBy: [{ itemClass: "asc" }, { number: "asc" }],
      select: {
        ...plain,
        description: true,
        stockLots: lots,
        successors: {
          select: { condition: true, successor: { select: { ...plain, stockLots: lots } } },
          orderBy: { successor: { number: "asc" } },
        },
      },
    }),
    assumptionsInUse(database()),
  ]);
  const stockOf = ({ itemClass, stockLots }: Pick<(typeof parts)[number], "itemClass" | "stockLots">) => {
    const rules = storageRules(itemClass, asOf, values);
    const counted = stockLots.map(({ siteId, site, bin, revision, state, quantity, lastPoweredOn }) => {
      const lot = { siteId, state, lastPoweredOn: lastPoweredOn && dayOf(lastPoweredOn) };
      const { usable: works } = usableCount([{ ...lot, quantity: 1 }], rules);
      return { siteId, siteCode: site.code, siteName: site.name, bin, revision, state, quantity, works };
    });
    return seenBy(actor, counted);
  };
  return parts.map(({ stockLots, successors, ...part }) => ({
    ...part,
    stock: stockOf({ itemClass: part.itemClass, stockLots }),
    alternates: successors.map(({ condition, successor: { stockLots: own, itemClass, ...other } }) => ({
      ...{ ...other, condition },
      stock: stockOf({ itemClass, stockLots: own }),
    })),
  }));
}

type GroupLot = CardStock["lots"][number] & { readonly siteId: string };

/** Lots at the actor's sites by name; those of all others only as one sum of what should work. */
function seenBy(actor: Actor, all: readonly GroupLot[]): CardStock {
  const [named, hidden]: [GroupLot[], GroupLot[]] = [[], []];
  for (const lot of all) (mayAt(actor.grants, "read", lot.siteId) ? named : hidden).push(lot);
  const usable = hidden.filter(({ state }) => state === "usable");
  return {
    lots: named
      .map(({ siteId: _, ...lot }) => lot)
      .sort((a, b) => compare(a.siteCode, b.siteCode) || compare(a.bin, b.bin)),
    unnamed: seesAll(actor) ? null : usable.reduce((sum, lot) => sum + (lot.quantity ?? 0) * lot.works, 0),
  };
}

const seesAll = (actor: Actor) => atSites(actor, "read").siteId === undefined;

const compare = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0);

function dayOf(date: Date): IsoDate {
  return date.toISOString().slice(0, 10);
}
