import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { readerOfMail, readReading, setReading } from "@/lib/data/reading";
import { makeActor } from "@/test/support/actors";
import { type FreshDatabase, freshDatabase } from "@/test/support/database";
import { makeTwoSites } from "@/test/support/twoSites";

let made: FreshDatabase;
let one: Actor;
let other: Actor;

beforeAll(async () => {
  made = await freshDatabase("reading");
  const { north } = await makeTwoSites();
  one = await makeActor("viewer", north);
  other = await makeActor("planner", north);
});
afterAll(() => made.close());

const nothing = { language: null, numbers: null };

describe("how somebody reads", () => {
  it("is not said until they say it, and mails are then in English", async () => {
    expect(await readReading(one)).toEqual(nothing);
    expect(await readerOfMail(one)).toEqual({ language: "en", numbers: "space-point" });
  });

  it("is each person's own, with the marks of the language unless they chose others", async () => {
    expect(await setReading(one, { language: "de", numbers: null })).toEqual({ ok: true, value: null });
    expect(await readReading(one)).toEqual({ language: "de", numbers: null });
    expect(await readerOfMail(one)).toEqual({ language: "de", numbers: "space-comma" });
    await setReading(one, { language: "de", numbers: "point-comma" });
    expect(await readerOfMail(one)).toEqual({ language: "de", numbers: "point-comma" });
    expect(await readReading(other)).toEqual(nothing);
  });

  it("is audited with what it was, once, and not when it is the same", async () => {
    const entries = () =>
      database().auditEntry.findMany({ where: { deed: "reading:set" }, orderBy: { at: "asc" } });
    expect((await entries()).map(({ userId, before, after }) => ({ userId, before, after }))).toEqual([
      { userId: one.userId, before: nothing, after: { language: "de", numbers: null } },
      {
        ...{ userId: one.userId, before: { language: "de", numbers: null } },
        after: { language: "de", numbers: "point-comma" },
      },
    ]);
    await setReading(one, { language: "de", numbers: "point-comma" });
    expect(await entries()).toHaveLength(2);
  });

  it("is one of the ways there are, whoever writes it", async () => {
    const write = (data: object) => database().user.update({ where: { id: other.userId }, data });
    await expect(write({ language: "tlh" })).rejects.toThrow("User_language");
    await expect(write({ numbers: "x" })).rejects.toThrow("User_numbers");
    expect(await readReading(other)).toEqual(nothing);
  });
});
