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
  const given = (node.arguments as Node[] | undefined) ?? [];
  const called = calledName(node);
  if (node.type === "MemberExpression") return AMBIENT.test(dotted(node)) ? dotted(node) : undefined;
  if (called === "Date" && given.length === 0) return "the time of now";
  if (node.type === "CallExpression" && called === "Date") return "Date()";
  if (called.startsWith("Intl.") && !namesLocale(given[0])) return `${called} without a locale`;
  const method = called.split(".").at(-1) ?? "";
  if (OF_THE_ZONE.test(method)) return `${method}()`;
  const locale = method === "localeCompare" ? given[1] : given[0];
  return OF_THE_LOCALE.test(method) && !namesLocale(locale) ? `${method} without a locale` : undefined;
}

function calledName({ type, callee }: Node): string {
  return type === "CallExpression" || type === "NewExpression" ? dotted(callee as Node) : "";
}

function dotted({ type, name, object, property }: Node): string {
  if (type === "Identifier") return String(name);
  if (type !== "MemberExpression") return "";
  return `${dotted(object as Node)}.${String((property as Node).name)}`;
}

function namesLocale(argument: Node | undefined): boolean {
  return argument !== undefined && argument.name !== "undefined";
}
