import type { Module } from "@/test/architecture/sources";
import type { Node } from "@/test/architecture/walk";
import { sentencesOf, textsOf } from "./sentence";

export interface FoundText {
  readonly text: string;
  readonly path: string;
}

/** What an attribute of these names holds is never read by a person. */
const SILENT_ATTRIBUTES =
  /^(class|className|id|key|name|type|href|src|kind|role|method|action|encType|htmlFor|form|slot|placement|width|height|style|rel|target|autoComplete|inputMode|pattern|lang|dir|d|viewBox|fill|stroke.*|transform|points|xmlns|scope|as|tone|size|align|variant|data-.*|aria-(hidden|live|current|controls|labelledby|describedby|expanded|haspopup|sort|pressed|selected|modal|atomic|busy|invalid|required|orientation|owns|activedescendant|checked)|dataKey|position|textAnchor|fontFamily|page|selectionMode|orientation|accept|step|min|max)$/;

/** Calls whose texts are names for machines or messages to programmers. */
const SILENT_CALLS =
  /^(require|\$(?:query|execute)Raw\w*|RangeError|TypeError|Error|RegExp|URL|includes|startsWith|endsWith|indexOf|get|has|set|delete|getElementById|querySelector|querySelectorAll|closest|matches|addEventListener|removeEventListener|dispatchEvent|getItem|setItem|removeItem|split|createHash|digest|replace|replaceAll|match|test|exec|DateTimeFormat|NumberFormat|regex|attribute)$/;

const SILENT_NODES =
  /^(ImportDeclaration|ExportAllDeclaration|ImportExpression|TS\w*(Type|Declaration|Member)\w*|TSLiteralType|TSInterfaceBody|TaggedTemplateExpression)$/;

/** Every text of a module that a person may come to read. */
export function collectTexts({ path, body }: Module): FoundText[] {
  const found: FoundText[] = [];
  const take = (texts: readonly string[]) => {
    for (const text of texts) if (isWords(text)) found.push({ text, path });
  };
  visit(body, take);
  return found;
}

type Take = (texts: readonly string[]) => void;

function visit(node: Node, take: Take): void {
  if (isSilent(node)) return;
  const spoken = spokenBy(node);
  if (spoken) take(spoken);
  const fields = Object.entries(node).filter(([field]) => !isSilentField(node, field));
  for (const child of fields.flatMap(([, value]) => value)) if (isNode(child)) visit(child, take);
  if (isSilentCall(node)) for (const kept of node.arguments as Node[]) if (isRecord(kept)) visit(kept, take);
}

function spokenBy(node: Node): readonly string[] | null {
  if (node.type === "JSXElement" || node.type === "JSXFragment") return sentencesOf(node.children as Node[]);
  if (node.type === "Literal")
    return typeof node.value === "string" ? [node.value.replace(/\s+/g, " ").trim()] : null;
  const composed = ["TemplateLiteral", "BinaryExpression", "CallExpression"].includes(node.type);
  return composed ? textsOf(node) : null;
}

function isSilent(node: Node): boolean {
  if (SILENT_NODES.test(node.type)) return true;
  if (node.type === "JSXAttribute") return SILENT_ATTRIBUTES.test(nameOf(node.name as Node));
  if (node.type === "ExpressionStatement" && typeof node.directive === "string") return true;
  return false;
}

/** Where a text is compared, looked up or named, it is not read. */
function isSilentField(node: Node, field: string): boolean {
  switch (node.type) {
    case "BinaryExpression":
      // The pieces of a sum are one text.
      return node.operator !== "+" || isPiece(node[field]);
    case "Property":
    case "PropertyDefinition":
    case "MethodDefinition":
      return field === "key" && node.computed !== true;
    case "SwitchCase":
      return field === "test";
    case "MemberExpression":
      return field === "property";
    case "CallExpression":
    case "NewExpression":
      return field === "arguments" && isSilentCall(node);
    default:
      return false;
  }
}

const isSilentCall = (node: Node) =>
  ["CallExpression", "NewExpression"].includes(node.type) &&
  SILENT_CALLS.test(calledName(node.callee as Node));

/** What `found.set(key, { … })` keeps may well be read. */
const isRecord = ({ type }: Node) => type === "ObjectExpression";

const isPiece = (value: unknown) => isNode(value) && ["BinaryExpression", "Literal"].includes(value.type);

const calledName = (callee: Node): string =>
  callee.type === "MemberExpression" ? nameOf(callee.property as Node) : nameOf(callee);

function nameOf(node: Node): string {
  if (node.type === "JSXNamespacedName") return "";
  return typeof node.name === "string" ? node.name : "";
}

/** Texts that look like words and are none, each with its reason. */
export const NOT_WORDS: Readonly<Record<string, RegExp>> = {
  "other spellings a register may use, in many languages": /\S\|\S/,
  "an address": /^(https?:)?\/|^\?|^\{\d+\}[?/#]/,
  "markup of a file": /<\??\/?\w+[^>]*>|xmlns|&amp;/,
  "a kind of content, or a header of an answer":
    /^[a-z]+\/[a-z.+-]+(;|$)|^attachment;|^(no-store|private|public|default-src|max-age)\b/,
  "a name in the code": /^[A-Za-z]+[a-z][A-Z]\w*$|^\{\d+\}[A-Z]\w*$|^[a-z]+\[/,
  "a name of a file": /^\S+\.(csv|xlsx|json|pdf|pptx|ics|zip|ts|mjs|woff)$/,
  "a question to the database":
    /^(SELECT|INSERT|UPDATE|DELETE|WITH|FROM|WHERE|AND|OR|ORDER BY|CREATE|COPY|SET|BEGIN|LOCK|ALTER|TRUNCATE|DECLARE|FETCH|JOIN|ON|REINDEX|VACUUM|PRAGMA)\s[^a-z]*/,
  "a list of classes, or a style": /^([a-z]+(-[a-z0-9]+)+( |$))+$|^var\(|^'(self|none)'|^data:/,
  "a cookie, or a header":
    /[Pp]ath=\/|^(Bearer realm|Authorization: Bearer|[A-Z][a-z]+(-[A-Z]?[A-Za-z]+)+$)|filename=/,
  "a program": /^const \{|"\$[A-Z]+"|^-[A-Xd] |^--data/,
  "a name of a file with places": /^[a-z-]+-\{0\}[-{}0-9a-z.]*\.\{?\w+\}?$/,
  codes: /^([A-Z]{2,3} )+[A-Z]{2,3}$/,
  "a key of a row": /^[a-z ]+\/\{0\}|^[a-z]+\.\{0\}\.|^\{0\}-\{1\}/,
  "a name of something kept on the device or in the database":
    /^ebbline (fold|draft)|^webhook secret|^-c |\[code\]|^costSteps|^xl\/|^yyyy-|^<\{0\}@/,
  "a line of the log, for whoever runs the server":
    /^(Job queue|Action|Interface|Search \{0\}): |^(action|door|page|request) refused$|^job queue$|^(key|import|search|code) (\{0\}|none|used before)/,
  "an attribute of a cookie, or a key of a store": /^; Secure$|^records none$|^Authorization$/,
  "written in both languages where it is made":
    /^(Jan|Feb|Mar|Apr|Jun|Jul|Aug|Sep|Sept|Oct|Okt|Nov|Dec|Dez|Tsd|Mio)\.?$|^(März|Mai|Juni|Juli)$|^\{0\}(Tsd|Mio)\.$/,
  "a list of passwords, or of rights of a browser": /^123456 |^camera=/,
  "a line of classes": /^((grid|flex|inline|block|text|border|min|gap|p|mx|my)(-[a-z0-9]+)*( |$))+$/,
  "no plural, but a state between two words":
    /^\{0\} (usables|unprovens|needs_repairs?|scrappeds|failuress)$/,
  "a command": /^(curl|npm|npx|node) /,
};

/** More than one word, or one that begins as a sentence or a name does. */
export function isWords(text: string): boolean {
  const plain = text.replace(/\{\d+\}/g, " ").trim();
  if (!/\p{L}{2}/u.test(plain)) return false;
  if (Object.values(NOT_WORDS).some((pattern) => pattern.test(text))) return false;
  if (plain !== text && /\s/.test(text)) return true;
  return /^\p{L}[\p{L}'’-]+[.:?!…]?$/u.test(plain)
    ? /^\p{Lu}\p{Ll}/u.test(plain)
    : /\s/.test(plain) && /\p{L}{2}/u.test(plain);
}

function isNode(value: unknown): value is Node {
  return typeof value === "object" && value !== null && typeof (value as Node).type === "string";
}
