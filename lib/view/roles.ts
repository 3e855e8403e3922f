import { type Deed, maySomewhere, type Role } from "@/lib/access/policy";
import { ROLES } from "@/lib/schema/people";
import { roleName } from "@/lib/view/role";

export interface RoleInWords {
  readonly role: Role;
  readonly name: string;
  /** What its holder may do at the sites it is given for, as one sentence. */
  readonly sentence: string;
}

/** Each deed a screen asks for, as the end of "may …", in the order they are told. */
const DEEDS: Partial<Readonly<Record<Deed, string>>> = {
  read: "read everything",
  "stock:write": "correct the shelf",
  "register:import": "load registers",
  "line:write": "change the figures of a line",
  "plan:write": "make plans",
  "plan:approve": "approve plans",
  "project:write": "run projects",
  "report:issue": "give out reports",
  "people:write": "give accounts and roles where the role holds at all sites",
};

/** The roles, the least first, each with what the policy lets it do. */
export const roles: readonly RoleInWords[] = ROLES.map((role) => ({
  role,
  name: roleName(role),
  sentence: sentenceOf(role),
}));

function sentenceOf(role: Role): string {
  if (role === "contractor")
    return "Somebody from outside who sees one project until a day, and may record what the work makes.";
  const grants = [{ role, siteId: null }];
  const words = (Object.keys(DEEDS) as Deed[])
    .filter((deed) => maySomewhere(grants, deed))
    .map((deed) => DEEDS[deed]);
  const [last, ...before] = words.reverse();
  if (last === undefined) return "May do nothing.";
  return before.length === 0 ? `May ${last}.` : `May ${before.reverse().join(", ")} and ${last}.`;
}
