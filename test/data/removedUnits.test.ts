import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { addRemovedUnit, changeRemovedUnit } from "@/lib/data/releaseChange";
import { addRemoved } from "@/lib/schema/closing";
import {
  added,
  closeWorld,
  engineer,
  makeClosable,
  openWorld,
  projectId,
  removedAs,
} from "../support/closableProject";

beforeAll(() => openWorld("removed-units"));
afterAll(() => closeWorld());
beforeEach(makeClosable);

describe("a removed unit", () => {
  it("is recorded once, not in the future, and one of two people who write it is told", async () => {
    expect(await addRemovedUnit(engineer, removedAs({ serial: "OK0" }))).toMatchObject({
      error: { code: "conflict", fields: { serial: "Recorded already." } },
    });
    const ahead = removedAs({ serial: "n", removedOn: "2026-12-01", testedOn: "2026-12-02" });
    expect(await addRemovedUnit(engineer, ahead)).toMatchObject({
      error: { fields: { removedOn: expect.any(String) } },
    });
    expect(await addRemovedUnit(engineer, removedAs({ plate: "nobody knows it" }))).toMatchObject({
      error: { fields: { plate: expect.any(String) } },
    });
    const unit = await added();
    const { projectId: _, ...said } = removedAs({ bin: "P2" });
    expect((await changeRemovedUnit(engineer, { ...unit, ...said })).ok).toBe(true);
    expect(await changeRemovedUnit(engineer, { ...unit, ...said })).toMatchObject({
      error: { code: "conflict" },
    });
  });

  it.each([
    [{ testedBy: "" }, "testedBy"],
    [{ how: "" }, "how"],
    [{ testedOn: "" }, "testedOn"],
    [{ testedOn: "2026-10-04" }, "testedOn"],
    [{ result: "" }, "result"],
    [{ result: "scrapped" }, "bin"],
  ])("is not tested with %o", (given, field) => {
    const read = addRemoved.safeParse({
      ...{ projectId, positionId: "", plate: "x", serial: "", revision: "", removedOn: "2026-10-05" },
      ...{ result: "usable", testedBy: "Bench", how: "load", testedOn: "2026-10-15", bin: "P1", ...given },
    });
    expect(read.success ? [] : read.error.issues.map(({ path }) => path.join("."))).toContain(field);
  });
});
