import { expect, test } from "vitest";
import type { GrantedRole } from "@/lib/access/policy";
import { describeEntry, gatherRoles, grantRoles, isPlaceless } from "@/lib/view/roleEntry";
import { roles } from "@/lib/view/roles";

const codes = new Map([
  ["v", "VEL"],
  ["o", "OST"],
  ["t", "THO"],
]);

test("granted roles gather by role and come back as they were", () => {
  const grants: GrantedRole[] = [
    { role: "viewer", siteId: null },
    { role: "planner", siteId: "v" },
    { role: "planner", siteId: "o" },
  ];
  const entries = gatherRoles([...grants].reverse());
  expect(entries.map((entry) => describeEntry(entry, codes))).toEqual([
    "Viewer at all sites",
    "Planner at OST and VEL",
  ]);
  expect(grantRoles(entries)).toHaveLength(grants.length);
  expect(grantRoles(entries)).toEqual(expect.arrayContaining(grants));
});

test("a role asked for twice is granted once, and all sites swallow single ones", () => {
  const at = (everywhere: boolean, ...siteIds: string[]) => ({
    role: "planner" as const,
    everywhere,
    siteIds,
  });
  expect(grantRoles([at(false, "v", "o"), at(false, "v")])).toEqual([
    { role: "planner", siteId: "v" },
    { role: "planner", siteId: "o" },
  ]);
  expect(grantRoles([at(false, "v"), at(true, "o")])).toEqual([{ role: "planner", siteId: null }]);
});

test("a role without a place is told from one with", () => {
  const entry = { role: "viewer" as const, everywhere: false, siteIds: [] };
  expect(isPlaceless(entry)).toBe(true);
  expect(isPlaceless({ ...entry, everywhere: true })).toBe(false);
  expect(isPlaceless({ ...entry, siteIds: ["v"] })).toBe(false);
});

test("three sites read as a list", () => {
  const entry = { role: "engineer" as const, everywhere: false, siteIds: ["v", "t", "o"] };
  expect(describeEntry(entry, codes)).toBe("Engineer at OST, THO and VEL");
});

test("the sentences say what the policy allows", () => {
  const said = Object.fromEntries(roles.map(({ name, sentence }) => [name, sentence]));
  expect(said.Viewer).toBe("May read everything.");
  expect(said.Approver).toBe("May read everything, make plans, approve plans and give out reports.");
  expect(said.Administrator).toContain("give accounts and roles");
  expect(said.Engineer).not.toContain("approve");
});
