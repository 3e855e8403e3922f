import { expect, test } from "vitest";
import type { PersonGrant } from "@/lib/schema/people";
import { describeEntry, FRESH_ENTRY, gatherRoles, grantRoles, lackOf } from "@/lib/view/roleEntry";
import { roles } from "@/lib/view/roles";

const codes = {
  sites: new Map([
    ["v", "VEL"],
    ["o", "OST"],
    ["t", "THO"],
  ]),
  projects: new Map([["k", "KAR-02-R1"]]),
};

const plain = { projectId: null, without: [], endsOn: null };

test("granted roles gather by role and come back as they were", () => {
  const grants: PersonGrant[] = [
    { role: "viewer", siteId: null, ...plain },
    { role: "planner", siteId: "v", ...plain },
    { role: "planner", siteId: "o", ...plain },
    { role: "engineer", siteId: "o", ...plain, without: ["money:read"] },
    { role: "engineer", siteId: "v", ...plain, endsOn: "2027-03-31" },
    { role: "contractor", siteId: null, projectId: "k", without: ["event:write"], endsOn: "2027-05-14" },
  ];
  const entries = gatherRoles([...grants].reverse());
  expect(entries.map((entry) => describeEntry(entry, codes))).toEqual([
    "Viewer at all sites",
    "Planner at OST and VEL",
    "Engineer at VEL, until 2027-03-31",
    "Engineer at OST, without amounts",
    "Contractor in KAR-02-R1, reads only, until 2027-05-14",
  ]);
  expect(grantRoles(entries)).toHaveLength(grants.length);
  expect(grantRoles(entries)).toEqual(expect.arrayContaining(grants));
});

test("a role asked for twice is granted once, and all sites swallow single ones", () => {
  const at = (everywhere: boolean, ...siteIds: string[]) => ({
    ...FRESH_ENTRY,
    role: "planner" as const,
    everywhere,
    siteIds,
  });
  expect(grantRoles([at(false, "v", "o"), at(false, "v")])).toEqual([
    { role: "planner", siteId: "v", ...plain },
    { role: "planner", siteId: "o", ...plain },
  ]);
  expect(grantRoles([at(false, "v"), at(true, "o")])).toEqual([{ role: "planner", siteId: null, ...plain }]);
});

test("a role without a place is told from one with, and a contractor from outside needs a project and an end", () => {
  expect(lackOf(FRESH_ENTRY)).toContain("at least one site");
  expect(lackOf({ ...FRESH_ENTRY, everywhere: true })).toBeNull();
  expect(lackOf({ ...FRESH_ENTRY, siteIds: ["v"] })).toBeNull();
  const contractor = { ...FRESH_ENTRY, role: "contractor" as const };
  expect(lackOf({ ...contractor, everywhere: true })).toContain("project");
  expect(lackOf({ ...contractor, projectId: "k" })).toContain("day");
  expect(lackOf({ ...contractor, projectId: "k", endsOn: "2027-05-14" })).toBeNull();
});

test("three sites read as a list", () => {
  const entry = { ...FRESH_ENTRY, role: "engineer" as const, siteIds: ["v", "t", "o"] };
  expect(describeEntry(entry, codes)).toBe("Engineer at OST, THO and VEL");
});

test("the sentences say what the policy allows", () => {
  const said = Object.fromEntries(roles.map(({ name, sentence }) => [name, sentence]));
  expect(said.Viewer).toBe("May read everything.");
  expect(said.Approver).toBe("May read everything, make plans, approve plans and give out reports.");
  expect(said.Administrator).toContain("give accounts and roles");
  expect(said.Engineer).not.toContain("approve");
});
