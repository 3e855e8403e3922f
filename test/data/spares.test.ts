import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { database } from "@/lib/data/client";
import { readSpares } from "@/lib/data/spares";
import { poolMove } from "@/lib/view/sparesMoves";
import { heldShares } from "@/lib/view/sparesShares";
import { type FreshDatabase, freshDatabase } from "../support/database";
import { asOf, fillSharedShelf, personWith, type SharedShelf } from "../support/sharedShelf";

let made: FreshDatabase;
let group: SharedShelf;

async function addRemoval(siteId: string, reference: string, on: string) {
  await database().event.create({
    data: {
      ...{
        siteId,
        partId: group.partId,
        itemClass: "drive",
        kind: "failure",
        source: "work order",
        reference,
      },
      happenedAt: new Date(`${on}T08:00:00Z`),
    },
  });
}

beforeAll(async () => {
  made = await freshDatabase("spares");
  group = await fillSharedShelf();
  await addRemoval(group.north, "W1", "2026-11-26");
  await addRemoval(group.south, "W2", "2026-11-27");
  await addRemoval(group.south, "W3", "2026-11-23");
});

afterAll(() => made.close());

describe("the weekly look at the spares", () => {
  it("holds the pool as it stands beside the week before, as known then", async () => {
    const look = await readSpares(personWith("viewer", null), asOf);
    expect([look.asOf, look.before]).toEqual(["2026-11-30", "2026-11-23"]);
    const [pool] = look.pools;
    // The notice became known on 25 November, so a week earlier supply was open.
    expect([pool?.before?.stage, pool?.stage]).toEqual(["open", "buy-window"]);
    expect(pool?.newRemovals).toBe(2);
    expect(pool && poolMove(pool).noSpare).toBeGreaterThan(0);
    expect(pool && poolMove(pool).reasons).toEqual(["Supply stage changed", "2 removals this week"]);
  });

  it("shows a reader of one site the sums of the group and nothing of another site", async () => {
    const look = await readSpares(personWith("viewer", group.north), asOf);
    expect(look.seesAll).toBe(false);
    expect(look.pools[0]).toMatchObject({ installed: 10, book: 8, newRemovals: 1 });
    expect(look.pools[0]?.sites).toMatchObject([{ siteCode: "NOR", units: 8, book: 1 }]);
    expect(JSON.stringify(look)).not.toMatch(/SUD/);
    expect(JSON.stringify(look)).not.toContain(group.south);
  });

  it("tells who holds more than they need, against the whole group", async () => {
    const everywhere = await readSpares(personWith("viewer", null), asOf);
    const shares = heldShares(everywhere.pools);
    // NOR has 1 of 8 pieces and 8 of 10 units, SUD 7 of 8 and 2 of 10.
    expect(shares.map(({ siteCode, index, hoards }) => [siteCode, index?.toFixed(4), hoards])).toEqual([
      ["NOR", (1 / 8 / (8 / 10)).toFixed(4), false],
      ["SUD", (7 / 8 / (2 / 10)).toFixed(4), true],
    ]);
    const own = await readSpares(personWith("viewer", group.south), asOf);
    expect(heldShares(own.pools)).toMatchObject([{ siteCode: "SUD", ofSpares: 0.875, ofUnits: 0.2 }]);
  });

  it("is empty for somebody without a site", async () => {
    const look = await readSpares({ ...personWith("viewer", null), grants: [] }, asOf);
    expect(look.pools).toEqual([]);
  });

  it("compares with the shelf as it stood then where that is known, and says so where it is not", async () => {
    const look = () => readSpares(personWith("viewer", null), asOf);
    expect((await look()).ownShelf).toBe(false);
    // Former states are kept since long before; what is written from here on was not known in that week.
    await database().rowBirth.deleteMany();
    await database().keptSince.create({ data: { id: 1, at: new Date("2026-01-01T00:00:00Z") } });
    const calm = await look();
    expect(calm.ownShelf).toBe(true);
    await database().stockLot.updateMany({ data: { quantity: 1 } });
    await database().evaluation.deleteMany();
    const taken = await look();
    expect(taken.pools[0]?.book).toBeLessThan(calm.pools[0]?.book ?? 0);
    expect(taken.pools[0]?.before).toEqual(calm.pools[0]?.before);
    await database().keptSince.deleteMany();
  });

  it("leaves the store as plain values", async () => {
    const look = await readSpares(personWith("viewer", null), asOf);
    expect(JSON.parse(JSON.stringify(look))).toEqual(look);
  });
});
