import { expect, test } from "vitest";
import { type Deed, isOnlyReader, mayAt, maySomewhere, type Role, scopeOf } from "@/lib/access/policy";

const roles: readonly Role[] = ["viewer", "technician", "planner", "engineer", "approver", "admin"];
const changes: readonly Deed[] = [
  "event:write",
  "stock:write",
  "register:import",
  "line:write",
  "plan:write",
  "plan:approve",
  "project:write",
  "report:issue",
  "people:write",
];

test("nobody without a role may do anything", () => {
  for (const deed of ["read" as Deed, ...changes]) {
    expect(scopeOf([], deed)).toEqual([]);
    expect(maySomewhere([], deed)).toBe(false);
  }
});

test("every role reads, and a viewer does nothing else", () => {
  for (const role of roles) expect(scopeOf([{ role, siteId: null }], "read")).toBe("all");
  for (const deed of changes) expect(maySomewhere([{ role: "viewer", siteId: null }], deed)).toBe(false);
});

test("only an approver or an administrator approves a plan", () => {
  const may = roles.filter((role) => maySomewhere([{ role, siteId: null }], "plan:approve"));
  expect(may).toEqual(["approver", "admin"]);
});

test("only an administrator changes who may do what", () => {
  const may = roles.filter((role) => maySomewhere([{ role, siteId: null }], "people:write"));
  expect(may).toEqual(["admin"]);
});

test("a role at one site says nothing about another site", () => {
  const grants = [{ role: "planner" as const, siteId: "s1" }];
  expect(mayAt(grants, "stock:write", "s1")).toBe(true);
  expect(mayAt(grants, "stock:write", "s2")).toBe(false);
});

test("roles at several sites add up, each with its own deeds", () => {
  const grants = [
    { role: "viewer" as const, siteId: "s2" },
    { role: "planner" as const, siteId: "s1" },
  ];
  expect(scopeOf(grants, "read")).toEqual(["s1", "s2"]);
  expect(scopeOf(grants, "stock:write")).toEqual(["s1"]);
});

test("who only reads and decides keeps no records anywhere", () => {
  const grant = (role: Role) => ({ role, siteId: "s1" });
  expect(isOnlyReader([grant("viewer"), grant("approver")])).toBe(true);
  expect(isOnlyReader([grant("approver"), grant("planner")])).toBe(false);
  expect(isOnlyReader([])).toBe(false);
  for (const role of roles.filter((one) => one !== "viewer" && one !== "approver"))
    expect(isOnlyReader([grant(role)])).toBe(false);
});
