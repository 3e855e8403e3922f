import "server-only";
import type { Actor } from "@/lib/access/actor";
import { scopeOf } from "@/lib/access/policy";
import { database } from "@/lib/data/client";
import { currentEvaluation } from "@/lib/data/group/currentEvaluation";
import { lookedBackTo } from "@/lib/data/lookBack";
import {
  type GroundQuestion,
  loadPlanGround,
  loadPlanProblem,
  type PlanGround,
} from "@/lib/data/planning/loadPlanGround";
import { type PlanEvaluator, planEvaluator } from "@/lib/portfolio/planWorth";

/** A ground with what evaluates plans on it; decisions of persons are in neither. */
export interface ReadyGround {
  readonly ground: PlanGround;
  readonly evaluator: PlanEvaluator;
}

/** Entities a ground is read from besides the figures, which have a version of their own. */
const BESIDE = [
  "PlanFigure",
  "ShutdownWindow",
  "ApprovalFreeze",
  "PlanPrecedence",
  "Obligation",
  "ScopeNorm",
  "CompatibilityRule",
  "Project",
];
const MOST_KEPT = 3;

/** The last grounds of this process; kept over hot reloads. */
const kept = globalThis as typeof globalThis & { ebblineGrounds?: Map<string, Promise<ReadyGround>> };

/** Which ground, and which lines (null: all) plans on it are made of. */
export interface ReadyQuestion extends GroundQuestion {
  readonly lineIds: readonly string[] | null;
}

/** The ground of a plan, from this process's memory while nothing it was read from has changed. */
export async function keptGround(actor: Actor, question: ReadyQuestion): Promise<ReadyGround> {
  // What it is read from beside the evaluation is told apart by the audit, which looks at now.
  if (lookedBackTo() !== null) return make(actor, question);
  const { id } = await currentEvaluation(question.asOf);
  const changes = await database().auditEntry.count({ where: { entity: { in: BESIDE } } });
  const scopes = [scopeOf(actor.grants, question.deed), scopeOf(actor.grants, "read")];
  const key = JSON.stringify([id, changes, scopes, question.lineIds]);
  kept.ebblineGrounds ??= new Map();
  const grounds = kept.ebblineGrounds;
  const known = grounds.get(key);
  if (known) return known;
  const made = make(actor, question);
  grounds.set(key, made);
  made.catch(() => grounds.delete(key));
  for (const old of [...grounds.keys()].slice(0, -MOST_KEPT)) grounds.delete(old);
  return made;
}

async function make(actor: Actor, question: ReadyQuestion): Promise<ReadyGround> {
  const ground = await loadPlanGround(actor, question);
  const problem = loadPlanProblem(actor, ground, question.lineIds);
  const { input, evaluation } = ground;
  return { ground, evaluator: planEvaluator({ problem, input, assumptions: evaluation.assumptions }) };
}
