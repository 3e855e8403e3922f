import type { Deed } from "@/lib/access/policy";

/**
 * Whose a thing is: of a site, so that only people of it come to it; of a project of the site, so that its contractors
 * come to it too; of the group, so that the right at all sites is needed; of the person who made it, and nobody else's;
 * anybody's who has the right somewhere, contractors' too, or everybody's who is signed in.
 */
export type Of = "site" | "project" | "group" | "person" | "anybody" | "contractors" | "everybody";

/** What an action needs, whose its rows are, and which known things its fields name where the usual ones are wrong. */
export type ActionRule = readonly [needs: Deed, of: Of, fields?: Readonly<Record<string, string>>];
export type ActionRules = Readonly<Record<string, ActionRule>>;

/** What a page needs, whose it is, what its address names, and what stands behind the question mark. */
export type PageRule = readonly [
  needs: Deed,
  of: Of,
  params?: Readonly<Record<string, string>>,
  search?: Readonly<Record<string, string>>,
];
export type PageRules = Readonly<Record<string, PageRule>>;
