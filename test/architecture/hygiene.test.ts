import { describe, expect, it } from "vitest";
import { badHabits } from "./hygiene";
import { listFiles, readText } from "./sources";

const CODE = /\.(ts|tsx|mjs|css|sql|prisma)$/;
/** Applied migrations stay as they are; these tests write down what they look for. */
const NOT_LOOKED_AT = /^(prisma\/migrations\/|test\/architecture\/)/;
const code = listFiles(".").filter((path) => CODE.test(path) && !NOT_LOOKED_AT.test(path));

describe("the code", () => {
  it("keeps our habits", () => {
    expect(code.length).toBeGreaterThan(60);
    expect(code.flatMap((path) => badHabits(path, readText(path)))).toEqual([]);
  });

  it.each([
    ["lib/x.ts", "// biome-ignore lint: reason"],
    ["lib/x.ts", "// @ts-expect-error"],
    ["lib/data/x.ts", "tx.$queryRawUnsafe(text)"],
    ["lib/x.ts", "// TODO finish"],
    ["test/unit/x.test.ts", "it.only('x', run)"],
    ["test/e2e/x.spec.ts", "await page.waitForTimeout(100)"],
    ["lib/data/x.ts", "process.env.DATABASE_URL"],
    ["seed/x.ts", "process.env.DATABASE_URL"],
    ["lib/x.ts", "\n".repeat(300).replaceAll("\n", "x;\n").concat("y;")],
    ["lib/utils/x.ts", ""],
    ["app/_ui/index.ts", ""],
  ])("is told of a planted breach in %s", (path, text) => {
    expect(badHabits(path, text)).toHaveLength(1);
  });

  it.each([
    ["lib/env.ts", "process.env.DATABASE_URL"],
    ["next.config.ts", "process.env.CI"],
    ["lib/x.ts", "x;\n".repeat(300)],
    ["test/outside/x.test.ts", "it.skipIf(!folder)('x', run)"],
  ])("is not told of what is right in %s", (path, text) => {
    expect(badHabits(path, text)).toEqual([]);
  });
});
