import { database } from "@/lib/data/client";
import type { RandomStream } from "@/lib/kernel/random";
import type { ChangeStockLot } from "@/lib/schema/stockLot";

/** One request a virtual user sends. */
export interface Sent {
  readonly path: string;
  readonly method?: "POST";
  readonly headers?: Readonly<Record<string, string>>;
  readonly body?: string;
  /** Whether the answer's text is what it must be; a page that says an error is none. */
  readonly isRight?: (text: string) => boolean;
}

/** A kind of request: how often among all, and the next one of it. */
export interface Kind {
  readonly name: string;
  readonly share: number;
  next(random: RandomStream): Sent;
}

export interface Terms {
  readonly address: string;
  readonly webhookId: string;
  /** Name of the action that writes a lot. */
  readonly saveStockLot: string;
}

/** Things looked at: enough that nothing answers from having just answered the same. */
const MANY = 2_000;

async function codesAndNumbers() {
  const [lines, parts, serials] = await Promise.all([
    database().line.findMany({ select: { code: true }, orderBy: { code: "asc" } }),
    database().part.findMany({ select: { id: true, number: true }, orderBy: { id: "asc" } }),
    database().unit.findMany({ select: { serial: true }, orderBy: { id: "asc" }, take: MANY }),
  ]);
  return {
    lines: lines.map(({ code }) => code),
    parts,
    serials: serials.flatMap(({ serial }) => serial ?? []),
  };
}

/** Searches as people type them: a number or serial whole, its beginning, its middle. */
function typed(text: string, random: RandomStream): string {
  const from = random.integer(0, 1) * Math.floor(text.length / 3);
  return text.slice(from, Math.max(from + 4, random.integer(5, text.length)));
}

type Lot = ChangeStockLot["seen"];

/** Lots that are edited to and fro, each by what was last written of it. */
async function lotEdits({ saveStockLot, address }: Terms) {
  const rows = await database().stockLot.findMany({
    where: { state: "usable", quantity: { gt: 1 } },
    orderBy: { id: "asc" },
    take: MANY,
  });
  const dayOf = (date: Date | null) => date?.toISOString().slice(0, 10) ?? null;
  const lots = rows.map(({ id, partId, state, quantity, lastPoweredOn, countedOn }) => {
    const seen = { state, quantity, lastPoweredOn: dayOf(lastPoweredOn), countedOn: dayOf(countedOn) } as Lot;
    return { id, partId, seen };
  });
  let place = 0;
  return (): Sent => {
    const lot = lots[place++ % lots.length];
    if (!lot) throw new Error("The database has no usable lot");
    const wanted = { ...lot.seen, quantity: (lot.seen.quantity ?? 0) + (place > lots.length ? -1 : 1) };
    const body = JSON.stringify([{ lotId: lot.id, seen: lot.seen, wanted }]);
    lot.seen = wanted;
    const headers = {
      "Next-Action": saveStockLot,
      "Content-Type": "text/plain;charset=UTF-8",
      Origin: address,
    };
    return { path: `/parts/${lot.partId}`, method: "POST", headers, body, isRight: isOk };
  };
}

/** What an action answered stands in the text as it was. */
const isOk = (text: string) => text.includes('"ok":true');

/** The mix of a working day: looking most of all, searching, now and then a change of the shelf. */
export async function requestKinds(terms: Terms): Promise<readonly Kind[]> {
  const { lines, parts, serials } = await codesAndNumbers();
  const edit = await lotEdits(terms);
  const isTable = (text: string) => text.includes("<table");
  return [
    {
      ...{ name: "floor: a page of one row", share: 15 },
      next: () => ({
        path: `/interface/webhooks/${terms.webhookId}`,
        isRight: (text) => text.includes("Of the bench"),
      }),
    },
    { name: "ranking", share: 25, next: () => ({ path: "/lines", isRight: isTable }) },
    {
      ...{ name: "line", share: 20 },
      next: (random) => ({ path: `/lines/${encodeURIComponent(random.pick(lines))}`, isRight: isTable }),
    },
    {
      ...{ name: "part", share: 18 },
      next: (random) => ({ path: `/parts/${random.pick(parts).id}`, isRight: isTable }),
    },
    {
      ...{ name: "search", share: 20 },
      next: (random) => {
        const text = random.next() < 0.5 ? random.pick(parts).number : random.pick(serials);
        const asked = encodeURIComponent(typed(text, random));
        return { path: `/api/search?q=${asked}`, isRight: (answer) => answer.includes('"title"') };
      },
    },
    { name: "stock edit", share: 2, next: edit },
  ];
}
