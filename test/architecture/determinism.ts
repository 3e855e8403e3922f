import type { Module } from "./sources";
import { type Node, walk } from "./walk";

const AMBIENT = /^(Math\.random|Date\.now|performance\.now|crypto\.(randomUUID|getRandomValues))$/;
/** Answers that depend on the zone of the machine; their UTC namesakes do not. */
const OF_THE_ZONE =
  /^(get|set)(FullYear|Month|Date|Day|Hours|Minutes|Seconds)$|^(getTimezoneOffset|toDateString)$/;
const OF_THE_LOCALE = /^(toLocale\w*|localeCompare)$/;

/** Uses of the clock, of dice, of the zone or of the locale of the machine. */
export function ambientUses({ path, body }: Module): string[] {
  const found: string[] = [];
  walk(body, (node) => {
    const use = ambientUse(node);
    if (use) found.push(`${path}: ${use}`);
  });
  return found;
}

function ambientUse(node: Node): string | undefined {
  if (node.type === "MemberExpression") return AMBIENT.test(dotted(node)) ? dotted(node) : undefined;
  const called = calledName(node);
  return called === "" ? undefined : (clockUse(node, called) ?? localeUse(node, called));
}

function clockUse(node: Node, called: string): string | undefined {
  if (called === "Date" && (node.type === "CallExpression" || argumentsOf(node).length === 0))
    return "Date of now";
  const method = methodOf(called);
  return OF_THE_ZONE.test(method) ? `${method}()` : undefined;
}

function localeUse(node: Node, called: string): string | undefined {
  const method = methodOf(called);
  if (!called.startsWith("Intl.") && !OF_THE_LOCALE.test(method)) return undefined;
  const locale = argumentsOf(node)[method === "localeCompare" ? 1 : 0];
  return namesLocale(locale) ? undefined : `${called} without a locale`;
}

const argumentsOf = (node: Node) => (node.arguments as Node[] | undefined) ?? [];
const methodOf = (called: string) => called.split(".").at(-1) ?? "";

function calledName({ type, callee }: Node): string {
  return type === "CallExpression" || type === "NewExpression" ? dotted(callee as Node) : "";
}

function dotted({ type, name, object, property }: Node): string {
  if (type === "Identifier") return String(name);
  if (type !== "MemberExpression") return "…";
  return `${dotted(object as Node)}.${String((property as Node).name)}`;
}

function namesLocale(argument: Node | undefined): boolean {
  return argument !== undefined && argument.name !== "undefined";
}
