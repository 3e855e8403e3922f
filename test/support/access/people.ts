import { randomUUID } from "node:crypto";
import { type Deed, maySomewhere, type Role } from "@/lib/access/policy";
import { database } from "@/lib/data/client";
import { ROLES } from "@/lib/schema/people";
import { cookieOf } from "@/test/support/access/inRequest";
import type { Of } from "@/test/support/access/rules";

/** Where somebody has the role: where the things asked for are, elsewhere, at all sites, in the project, nowhere. */
export type Place = "own" | "other" | "all" | "project" | "nowhere";

/** Somebody who asks. */
export interface Visitor {
  readonly who: string;
  /** Null is signed out. */
  readonly cookie: string | null;
  readonly role: Role | null;
  readonly place: Place;
}

interface Granted {
  readonly role: Role;
  readonly siteId?: string | null;
  readonly projectId?: string;
  readonly without?: readonly string[];
  readonly endsOn?: string;
}

const SIGNED_OUT: Visitor = { who: "signed out", cookie: null, role: null, place: "nowhere" };
const FAR = "2099-12-31";

/** The cookie of a new person with these roles. */
export async function cookieWith(...grants: readonly Granted[]): Promise<string> {
  const id = randomUUID();
  const rows = grants.map(({ siteId = null, without = [], endsOn, ...grant }) => ({
    ...{ ...grant, siteId, without: [...without] },
    ...(endsOn === undefined ? {} : { endsOn: new Date(`${endsOn}T00:00:00Z`) }),
  }));
  await database().user.create({
    data: { id, name: "Somebody of a test", email: `${id}@halvenor.example`, grants: { create: rows } },
  });
  return cookieOf(id);
}

interface Sites {
  readonly own: string;
  readonly other: string;
  readonly projectId: string;
}

/** Everybody who tries: signed out, without a role, each role here and there, at all sites, and a contractor. */
export async function makeVisitors({ own, other, projectId }: Sites): Promise<Visitor[]> {
  const placed = ROLES.filter((role) => role !== "contractor").flatMap((role) => [
    { role, place: "own" as const, siteId: own },
    { role, place: "other" as const, siteId: other },
  ]);
  const visitors = placed.map(async ({ role, place, siteId }) => ({
    ...{ who: `${role} at the ${place} site`, role, place },
    cookie: await cookieWith({ role, siteId }),
  }));
  return [
    SIGNED_OUT,
    { who: "somebody without a role", role: null, place: "nowhere", cookie: await cookieWith() },
    ...(await Promise.all(visitors)),
    {
      ...{ who: "administrator of all sites", role: "admin", place: "all" },
      cookie: await cookieWith({ role: "admin" }),
    },
    {
      ...{ who: "contractor of the project", role: "contractor", place: "project" },
      cookie: await cookieWith({ role: "contractor", projectId, endsOn: FAR }),
    },
  ];
}

export type Verdict = "let in" | "not there" | "sign in";

/** What somebody is to find who asks for a thing that needs a deed. */
export function expected({ cookie, role, place }: Visitor, needs: Deed, of: Of): Verdict {
  if (cookie === null) return "sign in";
  if (of === "everybody") return "let in";
  if (place === "project") {
    const mayThis = needs === "read" || needs === "event:write";
    return mayThis && (of === "project" || of === "contractors") ? "let in" : "not there";
  }
  if (role === null || !maySomewhere([{ role, siteId: null }], needs)) return "not there";
  const whose: Readonly<Record<Of, readonly Place[]>> = {
    ...{ site: ["own", "all"], project: ["own", "all"], group: ["all"], person: [] },
    ...{ anybody: ["own", "other", "all"], contractors: ["own", "other", "all"] },
    everybody: ["own", "other", "all", "project", "nowhere"],
  };
  return whose[of].includes(place) ? "let in" : "not there";
}
