import { describe, expect, it } from "vitest";
import { orderHits } from "@/lib/view/searchHit";

const hit = (title: string, rank: number, kind: "line" | "part" | "axis" = "part") => ({
  ...{ kind, title, rank },
  ...{ detail: "", href: `/${kind}/${title}` },
});

describe("hits of a search", () => {
  it("stand by match, then kind, then title", () => {
    const hits = [
      hit("C", 2, "line"),
      hit("B", 0, "axis"),
      hit("B", 0, "line"),
      hit("A", 0, "axis"),
      hit("A", 1),
    ];
    expect(orderHits(hits, 20).map(({ kind, title }) => `${kind} ${title}`)).toEqual([
      "line B",
      "axis A",
      "axis B",
      "part A",
      "line C",
    ]);
  });

  it("lead to each place once, by its best match, and no further than asked", () => {
    const hits = [{ ...hit("A", 2), detail: "worse" }, { ...hit("A", 0), detail: "better" }, hit("B", 1)];
    expect(orderHits(hits, 20).map(({ detail }) => detail)).toEqual(["better", ""]);
    expect(orderHits(hits, 1)).toEqual([{ kind: "part", title: "A", detail: "better", href: "/part/A" }]);
  });
});
