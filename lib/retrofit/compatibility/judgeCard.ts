import type { ControllerFacts, RuleOf } from "@/lib/retrofit/compatibility/facts";
import { crosses, type Step } from "@/lib/retrofit/compatibility/step";
import { READ_THE_LEVEL, type Verdict, verdictOf } from "@/lib/retrofit/compatibility/verdict";
import { isRevisionFrom } from "@/lib/retrofit/hardwareRevision";

/** Does the bus card survive the raise, and what hangs behind it? Null without such a card. */
export function judgeCard(
  rule: RuleOf<"card_lost">,
  controller: ControllerFacts,
  step: Step,
): Verdict | null {
  const { card, letter, level, racks: family } = rule.terms;
  const cards = controller.cards.filter((one) => one.family === card);
  if (cards.length === 0) return null;
  const racks = controller.racks
    .filter((one) => one.family === family)
    .reduce((sum, { pieces }) => sum + pieces, 0);
  const kept = cards.map(({ revision }) => isRevisionFrom(revision, letter));
  const found = kept.every(Boolean)
    ? {
        state: "clear" as const,
        arithmetic: `${card} from ${letter} on runs at ${level} too.`,
        unblocks: null,
      }
    : kept.includes(false)
      ? lost({ rule, racks, raised: crosses(step, controller.level, level) })
      : {
          state: "unknown" as const,
          arithmetic: `From ${level} on, a ${card} older than ${letter} is not run; the card's letter is not known.`,
          unblocks: "Read the letter off the card.",
        };
  return verdictOf(rule, {
    ...{ blocker: racks > 0 ? "I/O stranded" : "Card lost", ...found },
    facts: [
      ...cards.map(({ revision, evidence }) => ({
        text: `${card}, hardware ${revision ?? "not known"}`,
        evidence,
      })),
      ...(racks > 0
        ? [{ text: `${racks} × ${family} behind it`, evidence: cards[0]?.evidence ?? "assumed" }]
        : []),
    ],
  });
}

interface Losing {
  readonly rule: RuleOf<"card_lost">;
  readonly racks: number;
  readonly raised: boolean | null;
}

function lost({ rule, racks, raised }: Losing): Pick<Verdict, "state" | "arithmetic" | "unblocks"> {
  const { card, letter, level, racks: family } = rule.terms;
  const said = `From ${level} on, a ${card} older than ${letter} is not run`;
  if (raised === null) return { state: "unknown", arithmetic: `${said}.`, unblocks: READ_THE_LEVEL };
  if (!raised)
    return {
      state: "caution",
      arithmetic: `${said}. The controller need not go over ${level}, or is there already: see that the card is in use.`,
      unblocks: "Compare the record with the cabinet.",
    };
  return racks > 0
    ? {
        state: "blocked",
        arithmetic: `${said}, so ${racks} × ${family} behind it is cut off.`,
        unblocks: `Fit a ${card} from ${letter} on, or replace the racks.`,
      }
    : {
        state: "caution",
        arithmetic: `${said}; no ${family} is recorded behind it.`,
        unblocks: "See what uses the card.",
      };
}
