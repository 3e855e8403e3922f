import { axesOf, type ControllerFacts, type Rule, type RuleOf } from "@/lib/retrofit/compatibility/facts";
import { judgeRevision } from "@/lib/retrofit/compatibility/judgeDrive";
import { isRevisionFrom } from "@/lib/retrofit/hardwareRevision";

/** A piece on a shelf, as far as a rule asks. */
export interface Piece {
  readonly family: string | null;
  /** As on the plate; null is not known. */
  readonly revision: string | null;
}

/** Why a piece must not be counted on at a site, or null when no rule speaks against it. */
export interface Misfit {
  readonly code: string;
  readonly why: string;
}

const isRevisionRule = (rule: Rule): rule is RuleOf<"hardware_revision"> => rule.kind === "hardware_revision";

/** Controllers of the site the newer hardware would not run on, or of which nobody knows. */
function against(
  rule: RuleOf<"hardware_revision">,
  controllers: readonly ControllerFacts[],
): ControllerFacts[] {
  return controllers.filter((controller) => {
    const state = judgeRevision(rule, controller)?.state;
    return state === "blocked" || state === "unknown";
  });
}

/**
 * Whether a piece runs in all places of its family at a site, by the rules on hardware revisions in force.
 *
 * A piece of unknown revision is taken for one the rule is about, and a controller of unknown level for one that does
 * not run it: unknown is never better than the best known state.
 *
 * @returns The first rule that speaks against it, or null.
 */
export function misfitAt(
  { family, revision }: Piece,
  rules: readonly Rule[],
  controllers: readonly ControllerFacts[],
): Misfit | null {
  for (const rule of rules.filter(isRevisionRule)) {
    if (rule.terms.family !== family || isRevisionFrom(revision, rule.terms.revision) === false) continue;
    const shut = against(rule, controllers);
    if (shut.length === 0) continue;
    const axes = shut.reduce((sum, one) => sum + axesOf(one), 0);
    const what = revision === null ? "revision not known" : `hardware ${revision}`;
    const names = shut.map(({ designation }) => designation).slice(0, 3);
    const more = shut.length > names.length ? ` and ${shut.length - names.length} more` : "";
    return {
      code: rule.code,
      why: `${what}: ${names.join(", ")}${more} (${axes} axes) would not surely run it`,
    };
  }
  return null;
}
