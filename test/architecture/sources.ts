import { existsSync, readdirSync, readFileSync } from "node:fs";
import { builtinModules } from "node:module";
import { dirname, join, posix } from "node:path";
import { parseSync } from "oxc-parser";
import { type Node, walk } from "./walk";

const root = join(import.meta.dirname, "../..");
const NOT_OURS = [
  "node_modules",
  ".next",
  ".ebbline",
  ".git",
  "generated",
  "test-results",
  "playwright-report",
];

/** One import: what is written, where it leads, and whether it vanishes when compiled. */
export interface Import {
  readonly written: string;
  /** Path in the project, `npm:` and `node:` names, or undefined when it leads nowhere. */
  readonly target: string | undefined;
  readonly typeOnly: boolean;
}

export interface Module {
  readonly path: string;
  readonly text: string;
  readonly body: Node;
  readonly imports: readonly Import[];
}

/** All our own files below the given folders, by path from the project's root. */
export function listFiles(...folders: string[]): string[] {
  return folders.flatMap((folder) => {
    if (!existsSync(join(root, folder))) return [];
    return readdirSync(join(root, folder), { withFileTypes: true }).flatMap((entry) => {
      if (NOT_OURS.includes(entry.name)) return [];
      const path = folder === "." ? entry.name : `${folder}/${entry.name}`;
      return entry.isDirectory() ? listFiles(path) : [path];
    });
  });
}

export function readText(path: string): string {
  return readFileSync(join(root, path), "utf8");
}

/** Code of the folders, parsed, with each import followed. */
export function readModules(...folders: string[]): Module[] {
  return listFiles(...folders)
    .filter((path) => /\.(ts|tsx|mjs)$/.test(path) && !path.endsWith(".d.ts"))
    .map((path) => parseModule(path, readText(path)));
}

export function parseModule(path: string, text: string): Module {
  const { program, errors } = parseSync(path, text);
  if (errors.length > 0) throw new Error(`${path} cannot be parsed: ${errors[0]?.message}`);
  const body = program as unknown as Node;
  return { path, text, body, imports: importsOf(path, body) };
}

function importsOf(path: string, body: Node): Import[] {
  const found: Import[] = [];
  walk(body, (node) => {
    const source = sourceOf(node);
    if (source === undefined) return;
    found.push({ written: source, target: follow(path, source), typeOnly: isTypeOnly(node) });
  });
  return found;
}

/** The module a node names: imports, re-exports, `import()`, import types and `new URL(…, import.meta.url)`. */
function sourceOf(node: Node): string | undefined {
  const { type, source, callee, arguments: given } = node;
  if (
    [
      "ImportDeclaration",
      "ExportNamedDeclaration",
      "ExportAllDeclaration",
      "TSImportType",
      "ImportExpression",
    ].includes(type)
  )
    return text(source);
  const startsFile =
    type === "NewExpression" && (callee as Node).name === "URL" && (given as Node[]).length === 2;
  const url = startsFile ? text((given as Node[])[0]) : undefined;
  return url && /\.(ts|mjs|js)$/.test(url) ? url : undefined;
}

const text = (node: unknown): string | undefined => {
  const value = (node as Node | null | undefined)?.value;
  return typeof value === "string" ? value : undefined;
};

function isTypeOnly(node: Node): boolean {
  return node.type === "TSImportType" || node.importKind === "type" || node.exportKind === "type";
}

const declared = JSON.parse(readText("package.json"));
const packages = new Set(
  Object.keys({ ...declared.dependencies, ...declared.devDependencies, ...declared.optionalDependencies }),
);

function follow(from: string, written: string): string | undefined {
  if (written.startsWith("@/")) return fileAt(written.slice(2));
  if (written.startsWith(".")) return fileAt(posix.join(dirname(from), written));
  const bare = written.replace(/^node:/, "");
  if (builtinModules.includes(bare)) return `node:${bare}`;
  const name = bare.split("/", bare.startsWith("@") ? 2 : 1).join("/");
  return packages.has(name) ? `npm:${name}` : undefined;
}

function fileAt(path: string): string | undefined {
  const endings = /\.[a-z]+$/.test(path) ? ["", ".ts", ".tsx"] : [".ts", ".tsx", ".mjs", "/index.ts"];
  const found = endings.find((ending) => existsSync(join(root, path + ending)));
  return found === undefined ? undefined : path + found;
}
