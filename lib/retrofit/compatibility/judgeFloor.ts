import type { ControllerFacts, RuleOf } from "@/lib/retrofit/compatibility/facts";
import { type Acceptance, accept, type floorRules } from "@/lib/retrofit/compatibility/step";
import {
  either,
  levelFact,
  READ_THE_LEVEL,
  type Verdict,
  verdictOf,
} from "@/lib/retrofit/compatibility/verdict";
import { firmwareWord, meetsLevel, parseFirmwareLevel } from "@/lib/retrofit/firmwareLevel";
import type { AcceptedController } from "@/lib/schema/compatibilityRule";

/** The accepted controllers in words: `Slate 5 from 24 or Slate 7`. */
export function acceptedWords(accepted: readonly AcceptedController[]): string {
  return either(accepted.map(({ model, level }) => (level === null ? model : `${model} from ${level}`)));
}

/** What a list of accepted controllers says of one, in state, words and way out. */
export function holdAgainst(
  controller: ControllerFacts,
  { accepted, what }: { readonly accepted: readonly AcceptedController[]; readonly what: string },
): Pick<Verdict, "state" | "arithmetic" | "unblocks"> {
  const found = accept(controller, accepted);
  const own = firmwareWord(controller.level);
  const { model } = controller;
  if (found.answer === "not-listed")
    return {
      state: "blocked",
      arithmetic: `No level of ${model} runs ${what}; ${acceptedWords(accepted)} does.`,
      unblocks: "Replace the controller and convert its program.",
    };
  return { ...SAID[found.answer]({ own, what, model, needed: found.needed }) };
}

interface Words {
  readonly own: string;
  readonly what: string;
  readonly model: string;
  readonly needed: string | null;
}

const SAID: Readonly<
  Record<
    Exclude<Acceptance["answer"], "not-listed">,
    (words: Words) => Pick<Verdict, "state" | "arithmetic" | "unblocks">
  >
> = {
  meets: ({ own, what, model, needed }) => ({
    state: "clear",
    arithmetic:
      needed === null
        ? `${model} runs ${what} at any level.`
        : `${own} meets ${needed}, from which it runs ${what}.`,
    unblocks: null,
  }),
  below: ({ own, what, needed }) => ({
    state: "blocked",
    arithmetic: `${own} is below ${needed}, which ${what} needs.`,
    unblocks: `Raise the firmware to ${needed} or higher where memory and cards allow it; back up first.`,
  }),
  undecidable: ({ own, what, needed }) => ({
    state: "unknown",
    arithmetic:
      needed === null
        ? `Level ${own}: nobody knows the controller well enough to hold it against ${what}.`
        : `Level ${own} cannot be held against ${needed}, which ${what} needs.`,
    unblocks: READ_THE_LEVEL,
  }),
};

/** Does the controller run the drives that would replace those it has? */
export function judgeFloor(rule: RuleOf<"controller_floor">, controller: ControllerFacts): Verdict {
  const { families, controllers: accepted } = rule.terms;
  return verdictOf(rule, {
    blocker: "Firmware floor",
    ...holdAgainst(controller, { accepted, what: either(families) }),
    facts: [levelFact(controller)],
  });
}

/** Can the model reach the level the floor asks for at all? Null for another model, or when no floor asks. */
export function judgeCeiling(
  rule: RuleOf<"ceiling">,
  controller: ControllerFacts,
  floors: ReturnType<typeof floorRules>,
): Verdict | null {
  const { model, level } = rule.terms;
  if (controller.model !== model || floors.length === 0) return null;
  const facts = [levelFact(controller)];
  const needs = floors.map(({ terms }) => terms.controllers.find((one) => one.model === model));
  const beyond = needs.some((one) => one === undefined || (one.level !== null && !reaches(level, one.level)));
  const asked = needs.flatMap((one) => (one?.level ? [one.level] : []));
  const against = asked.length === 0 ? "and no level of it is accepted" : `and ${either(asked)} is asked for`;
  return verdictOf(rule, {
    blocker: "Hardware ceiling",
    state: beyond ? "blocked" : "clear",
    arithmetic: `${model} ends at ${level}, ${against}.`,
    unblocks: beyond ? "Replace the controller and convert its program; the project grows by it." : null,
    facts,
  });
}

const reaches = (ceiling: string, needed: string) =>
  meetsLevel(parseFirmwareLevel(ceiling), parseFirmwareLevel(needed)) === "yes";
