import { chooseAxes } from "@/lib/retrofit/scope/axisScope";
import type { ScopeFacts } from "@/lib/retrofit/scope/scopeFacts";
import { successorIn } from "@/lib/retrofit/scope/successorFor";

/** A family a line could be converted to. */
export interface TargetChoice {
  readonly family: string;
  /** Axes that would be converted. */
  readonly axes: number;
  /** Of these, with a successor of the family on record. */
  readonly recorded: number;
}

/** The families of drives that follow others or are in open supply; that with most recorded successors first. */
export function targetChoices(facts: ScopeFacts): TargetChoice[] {
  const followers = new Set(facts.successors.map(({ successorId }) => successorId));
  const families = new Set(
    facts.parts.flatMap(({ id, itemClass, family, stage }) =>
      itemClass === "drive" && family !== null && (stage === "open" || followers.has(id)) ? [family] : [],
    ),
  );
  return [...families]
    .map((family): TargetChoice => {
      const { converted } = chooseAxes(facts, family);
      const recorded = converted.filter(
        ({ axis }) => axis.drive && successorIn(axis.drive, family, facts)?.basis === "recorded",
      ).length;
      return { family, axes: converted.length, recorded };
    })
    .sort((a, b) => b.recorded - a.recorded || (a.family < b.family ? -1 : 1));
}
