import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Deed, type GrantedRole, mayAt, narrowGrants, type Role } from "@/lib/access/policy";

const SITES = ["a", "b", "c"];
const ROLES: Role[] = ["viewer", "technician", "planner", "engineer", "approver", "admin"];
const DEEDS: Deed[] = ["read", "event:write", "stock:write", "register:import", "people:write"];

const anyGrants = fc.array(
  fc.record({ role: fc.constantFrom(...ROLES), siteId: fc.constantFrom(...SITES, null) }),
  { maxLength: 4 },
);
const anyLimits = fc.record({
  deeds: fc.subarray(DEEDS),
  siteIds: fc.option(fc.subarray(SITES), { nil: null }),
});

describe("a key's limits", () => {
  it("let through exactly what both the roles and the limits allow, at every site and for every deed", () => {
    fc.assert(
      fc.property(anyGrants, anyLimits, (grants: GrantedRole[], limits) => {
        const narrowed = narrowGrants(grants, limits);
        for (const deed of DEEDS)
          for (const site of SITES) {
            const limited = limits.deeds.includes(deed) && (limits.siteIds?.includes(site) ?? true);
            expect(mayAt(narrowed, deed, site)).toBe(mayAt(grants, deed, site) && limited);
          }
      }),
    );
  });

  it("put one upon another let through what all of them allow", () => {
    const grants: GrantedRole[] = [{ role: "planner", siteId: null }];
    const once = narrowGrants(grants, { deeds: ["read", "stock:write"], siteIds: ["a", "b"] });
    const twice = narrowGrants(once, { deeds: ["read", "event:write"], siteIds: ["b", "c"] });
    expect(twice).toEqual([{ role: "planner", siteId: "b", only: ["read"] }]);
  });
});
