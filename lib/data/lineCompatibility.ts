import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { type FactsQuestion, readControllerFacts } from "@/lib/data/controllerFacts";
import { readRulesInForce } from "@/lib/data/rules";
import { atSites } from "@/lib/data/scope";
import { type JudgedLine, judgeLine } from "@/lib/retrofit/compatibility";
import type { ControllerFacts, Rule } from "@/lib/retrofit/compatibility/facts";
import type { LineStanding } from "@/lib/view/standing";

/** How a line stands against the rules in force. */
export async function readLineCompatibility(
  actor: Actor,
  question: FactsQuestion & { readonly lineId: string },
): Promise<JudgedLine> {
  const [rules, facts] = await Promise.all([readRulesInForce(actor), readControllerFacts(actor, question)]);
  return judgeLine(rules, facts.get(question.lineId) ?? []);
}

/** How each line at the actor's sites stands against the rules in force, by code. */
export async function readStandings(actor: Actor, question: FactsQuestion): Promise<LineStanding[]> {
  const [rules, lines] = await Promise.all([readRulesInForce(actor), readLineFacts(actor, question)]);
  return judgeLines(rules, lines);
}

/** A line with the facts rules ask about its controllers. */
export interface LineFacts {
  readonly code: string;
  readonly name: string;
  readonly siteCode: string;
  readonly controllers: readonly ControllerFacts[];
}

/** The lines at the actor's sites with what rules ask, by code; one without a controller too. */
export async function readLineFacts(actor: Actor, question: FactsQuestion): Promise<LineFacts[]> {
  const [lines, facts] = await Promise.all([
    database().line.findMany({
      where: atSites(actor, "read"),
      orderBy: { code: "asc" },
      select: { id: true, code: true, name: true, site: { select: { code: true } } },
    }),
    readControllerFacts(actor, question),
  ]);
  return lines.map(({ id, code, name, site }) => ({
    ...{ code, name, siteCode: site.code },
    controllers: facts.get(id) ?? [],
  }));
}

function judgeLines(rules: readonly Rule[], lines: readonly LineFacts[]): LineStanding[] {
  return lines.map(({ controllers, ...line }) => ({ ...line, ...judgeLine(rules, controllers) }));
}
