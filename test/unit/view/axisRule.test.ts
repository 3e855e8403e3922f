import { expect, test } from "vitest";
import { type AxisCheck, axisChecks } from "@/lib/retrofit/axisChecks";
import { emptyEntry, judgeCheck } from "@/lib/retrofit/judgeCheck";
import {
  beforeWords,
  checkUnit,
  paperValues,
  readingsWords,
  ruleWords,
  takesBefore,
  takesLimit,
} from "@/lib/view/axisRule";

function checkOf(id: string): AxisCheck {
  const check = axisChecks.find((one) => one.id === id);
  if (!check) throw new Error(`no check ${id}`);
  return check;
}

test("the words of a rule carry its numbers", () => {
  expect(ruleWords(checkOf("travel"))).toContain("by 0.05 % of it where none is set");
  expect(ruleWords(checkOf("homing"))).toContain("10 readings spread by the limit at most");
  expect(ruleWords(checkOf("following"))).toBe(
    "no reading is above 110 % of the value before, nor the limit, where one is set",
  );
  expect(ruleWords(checkOf("stopping"))).toBe("no reading is above 100 % of the value before, nor the limit");
  expect(ruleWords(checkOf("rate"))).toBe("no reading is below 98 % of the value before");
});

test("a check asks for exactly what its verdict misses", () => {
  for (const check of axisChecks) {
    const left = { ...emptyEntry, asLeft: Array.from({ length: 10 }, () => 0), confirmed: true };
    const { reason } = judgeCheck(check, { ...left, limit: 1 });
    expect([check.id, takesBefore(check) && check.id !== "homing"]).toEqual([
      check.id,
      reason === "Missing: the value found before removal.",
    ]);
    if (judgeCheck(check, { ...left, asFound: 0 }).reason === "Missing: the limit.")
      expect([check.id, takesLimit(check)]).toEqual([check.id, true]);
  }
});

test("the unit of travel is that of the axis, and stays a word where it is not known", () => {
  expect(checkUnit(checkOf("scaling"), "mm")).toBe("counts per mm");
  expect(checkUnit(checkOf("travel"), "deg")).toBe("deg");
  expect(checkUnit(checkOf("travel"), null)).toBe("unit of travel");
  expect(checkUnit(checkOf("backup"), "mm")).toBeNull();
});

test("scaling is compared with the record, the rest with what was found, by as many readings as the rule asks", () => {
  expect(beforeWords(checkOf("counts"))).toBe("By the record");
  expect(beforeWords(checkOf("travel"))).toBe("Before removal");
  expect(readingsWords(checkOf("stopping"))).toBe("10 readings with the new drive");
  expect(readingsWords(checkOf("following"))).toBe("With the new drive");
});

test("paper leaves room for what is asked and not known, and a dash for what is not asked", () => {
  const of = (id: string, recorded: number | null) => {
    const check = checkOf(id);
    return paperValues({ check, entry: emptyEntry, verdict: judgeCheck(check, emptyEntry) }, recorded);
  };
  expect(of("counts", 131_072)).toEqual({ before: "131\u202f072", limit: "–" });
  expect(of("travel", null)).toEqual({ before: "", limit: "" });
  expect(of("torque", null)).toEqual({ before: "–", limit: "" });
  expect(of("lost-cycles", null)).toEqual({ before: "–", limit: "–" });
});
