import type { Node } from "@/test/architecture/walk";

/** A piece of a sentence: words as written, or a place where something else is put. */
type Piece = string | null;

/** Ways a sentence can be put: more than this many are not spelled out. */
const MOST_WAYS = 12;

/** Every way an expression can read; a place for what is not written out. */
function waysOf(node: Node | null | undefined): Piece[][] {
  if (!node) return [[null]];
  switch (node.type) {
    case "Literal":
      return [[typeof node.value === "string" || typeof node.value === "number" ? String(node.value) : null]];
    case "TemplateLiteral":
      return templateWays(node);
    case "ConditionalExpression":
      return [...waysOf(node.consequent as Node), ...waysOf(node.alternate as Node)];
    case "LogicalExpression":
      return node.operator === "&&"
        ? [[""], ...waysOf(node.right as Node)]
        : [...waysOf(node.left as Node), ...waysOf(node.right as Node)];
    case "BinaryExpression":
      return node.operator === "+" && !isNumber(node.right as Node)
        ? joinWays([waysOf(node.left as Node), waysOf(node.right as Node)])
        : [[null]];
    case "ParenthesizedExpression":
    case "TSAsExpression":
    case "TSSatisfiesExpression":
      return waysOf(node.expression as Node);
    case "CallExpression":
      return countWays(node) ?? [[null]];
    default:
      return [[null]];
  }
}

const isNumber = (node: Node) => node.type === "Literal" && typeof node.value === "number";

/** `count(n, "drive")` and its like read `{0} drive` and `{0} drives`. */
function countWays(node: Node): Piece[][] | null {
  const called = (node.callee as Node).name;
  if (called !== "count" && called !== "plural" && called !== "counted") return null;
  const words = (node.arguments as Node[]).slice(1).map((word) => waysOf(word));
  const [ones, manys] = words;
  if (!ones) return null;
  const many = manys ?? ones.map((way) => [...way, "s"]);
  return [...ones, ...many].map((way) => [null, " ", ...way]);
}

function templateWays(node: Node): Piece[][] {
  const texts = (node.quasis as { value: { cooked: string } }[]).map(({ value }) => [[value.cooked]]);
  const slots = (node.expressions as Node[]).map((slot) => waysOf(slot));
  return joinWays(texts.flatMap((text, at) => (at < slots.length ? [text, slots[at] ?? [[null]]] : [text])));
}

/** Each way of the first followed by each of the next; one place in between where there would be too many. */
function joinWays(parts: readonly Piece[][][]): Piece[][] {
  const all = parts.reduce((product, part) => product * part.length, 1);
  const few = all <= MOST_WAYS ? parts : parts.map((part) => (part.length > 1 ? [[null]] : part));
  return few.reduce<Piece[][]>(
    (before, part) => before.flatMap((way) => part.map((next) => [...way, ...next])),
    [[]],
  );
}

/** Pieces as one text with numbered places: `{0} usable of {1} counted`. */
function written(pieces: readonly Piece[]): string {
  const parts: string[] = [];
  let place = 0;
  for (const piece of pieces) parts.push(piece ?? `{${place++}}`);
  return parts.join("").replace(/\s+/g, " ").trim();
}

/** Every text an expression can give. */
export const textsOf = (node: Node): string[] => [...new Set(waysOf(node).map(written))];

/** Text between tags as the compiler keeps it: lines trimmed and joined, empty ones dropped. */
function betweenTags(text: string): string {
  const lines = text.split(/\r?\n/);
  const kept = lines.map((line, at) => {
    const left = at === 0 ? line : line.replace(/^[ \t]+/, "");
    return at === lines.length - 1 ? left : left.replace(/[ \t]+$/, "");
  });
  return kept.filter((line) => line !== "").join(" ");
}

/** The children of an element as sentences; elements within are places. */
export function sentencesOf(children: readonly Node[]): string[] {
  const parts = children.map((child): Piece[][] => {
    if (child.type === "JSXText") return [[betweenTags(decoded(child.value as string))]];
    if (child.type === "JSXExpressionContainer") {
      const inner = child.expression as Node;
      return inner.type === "JSXEmptyExpression" ? [[""]] : waysOf(inner);
    }
    return [[null]];
  });
  return [...new Set(joinWays(parts).map(written))];
}

const ENTITIES: Readonly<Record<string, string>> = {
  amp: "&",
  lt: "<",
  gt: ">",
  quot: '"',
  apos: "'",
  nbsp: "\u00a0",
};

const decoded = (text: string) => text.replace(/&(\w+);/g, (all, name: string) => ENTITIES[name] ?? all);
