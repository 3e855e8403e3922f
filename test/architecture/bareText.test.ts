import { expect, test } from "vitest";
import { type Module, parseModule, readModules } from "./sources";
import { type Node, walk } from "./walk";

/** Texts meet the reader's words as the child of an element: a part that gives back a bare one stays English. */
const modules = readModules("app").filter(({ path }) => path.endsWith(".tsx"));

test("no part of a page gives back a bare text", () => {
  expect(modules.flatMap(bareTexts)).toEqual([]);
});

test.each([
  ['"nothing"', true],
  ["`left`", true],
  ["NOT_KNOWN", true],
  ["late ? <b>{n}</b> : words(n)", true],
  ["<>nothing</>", false],
  ["null", false],
  ["rows.map((row) => <p key={row}>{row}</p>)", false],
])("a part that gives back %s is found: %s", (given, isBare) => {
  const module = parseModule("app/Part.tsx", `function Part({ n, late }) { return ${given}; }`);
  expect(bareTexts(module)).toHaveLength(isBare ? 1 : 0);
});

function bareTexts({ path, body, text }: Module): string[] {
  const found: string[] = [];
  walk(body, (node) => {
    const name = (node.id as { name?: string } | null)?.name ?? "";
    if (node.type !== "FunctionDeclaration" || !/^[A-Z][a-z]/.test(name)) return;
    for (const given of returnsOf(node.body as Node))
      if (isBare(given))
        found.push(`${path}: ${name} gives back ${text.slice(Number(given.start), Number(given.end))}`);
  });
  return found;
}

/** What a function gives back itself, not what a function within it does. */
function returnsOf(node: Node): Node[] {
  if (/Function/.test(node.type)) return [];
  if (node.type === "ReturnStatement") return node.argument ? [node.argument as Node] : [];
  const within = Object.values(node)
    .flat()
    .filter((child): child is Node => typeof (child as Node)?.type === "string");
  return within.flatMap(returnsOf);
}

function isBare(node: Node): boolean {
  switch (node.type) {
    case "Literal":
      return typeof node.value === "string";
    case "TemplateLiteral":
      return true;
    case "Identifier":
      return /^[A-Z][A-Z_]+$/.test(node.name as string);
    case "CallExpression":
      return (node.callee as Node).type === "Identifier" && (node.callee as Node).name !== "notFound";
    case "ConditionalExpression":
      return isBare(node.consequent as Node) || isBare(node.alternate as Node);
    default:
      return false;
  }
}
