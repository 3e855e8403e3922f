import type { ControllerFacts, RuleOf } from "@/lib/retrofit/compatibility/facts";
import { holdAgainst } from "@/lib/retrofit/compatibility/judgeFloor";
import { levelFact, type Verdict, verdictOf } from "@/lib/retrofit/compatibility/verdict";

/** Would the controller run a drive of the newer hardware in one of its places? Null without such drives. */
export function judgeRevision(
  rule: RuleOf<"hardware_revision">,
  controller: ControllerFacts,
): Verdict | null {
  const { family, revision, controllers: accepted } = rule.terms;
  if (!controller.groups.some(({ drive }) => drive === family)) return null;
  return verdictOf(rule, {
    blocker: "Drive revision",
    ...holdAgainst(controller, { accepted, what: `${family} of hardware ${revision} or later` }),
    facts: [levelFact(controller)],
  });
}

/** Which axes have to be converted together? Null without a ring. */
export function judgeRing(rule: RuleOf<"ring_whole">, { rings, evidence }: ControllerFacts): Verdict | null {
  if (rings.length === 0) return null;
  const across = rings.some(({ elsewhere }) => elsewhere > 0);
  const sizes = rings.map(
    ({ name, axes, elsewhere }) =>
      `${name} ${axes + elsewhere}${elsewhere > 0 ? `, of them ${elsewhere} on another controller` : ""}`,
  );
  return verdictOf(rule, {
    blocker: "Ring whole",
    state: across ? "caution" : "clear",
    arithmetic: `Axes that convert together, by ring: ${sizes.join("; ")}.`,
    unblocks: across
      ? "Convert the controllers of a ring in one window, or run a second network beside it."
      : null,
    facts: [{ text: `${rings.length === 1 ? "1 ring" : `${rings.length} rings`} on record`, evidence }],
  });
}
