import { listFiles, readText } from "@/test/architecture/sources";

/** What the tree opens to the outside, by kind, each named as the access table names it. */
export interface Endpoints {
  /** Addresses of pages, such as `/lines/[code]`. */
  readonly pages: readonly string[];
  /** Route handlers, such as `GET /api/search`. */
  readonly routes: readonly string[];
  /** Actions, such as `lines/[code]#saveLineFigures`. */
  readonly actions: readonly string[];
  /** Files sent as they lie there. */
  readonly files: readonly string[];
}

/** Files of the framework's own names that it sends to everybody. */
const SENT = /^app\/(.*\/)?(favicon|icon|apple-icon|opengraph-image|manifest|robots|sitemap)\.[a-z]+$/;
const HANDLER = /export (?:async )?(?:const|function) (?:\{ )?(GET|POST|PUT|PATCH|DELETE|HEAD|OPTIONS)\b/g;

/** Reads the tree anew, so that what is in no table is found. */
export function readEndpoints(files: readonly string[] = listFiles("app", "public")): Endpoints {
  const named = (end: string) => files.filter((path) => path.endsWith(`/${end}`));
  return {
    pages: named("page.tsx").map(addressOf).sort(),
    routes: named("route.ts")
      .flatMap((path) => methodsOf(readText(path)).map((method) => `${method} ${addressOf(path)}`))
      .sort(),
    actions: named("actions.ts")
      .flatMap((path) => actionsOf(readText(path)).map((name) => `${folderOf(path)}#${name}`))
      .sort(),
    files: files.filter((path) => path.startsWith("public/") || SENT.test(path)).sort(),
  };
}

/** Groups such as `(workspace)` are no part of an address. */
const folderOf = (path: string) =>
  path
    .split("/")
    .slice(1, -1)
    .filter((part) => !part.startsWith("("))
    .join("/");

const addressOf = (path: string) => `/${folderOf(path)}`;

export function methodsOf(text: string): string[] {
  const listed = [...text.matchAll(/export const \{([^}]*)\}/g)].flatMap(
    ([, names = ""]) => names.match(/[A-Z]+/g) ?? [],
  );
  return [...new Set([...[...text.matchAll(HANDLER)].map(([, method = ""]) => method), ...listed])];
}

const actionsOf = (text: string) =>
  [...text.matchAll(/^export const (\w+) =/gm)].map(([, name = ""]) => name);

/** Where the module of an action or page lies, by how the table names it. */
export function moduleOf(address: string, end: string, files = listFiles("app")): string {
  const found = files.find((path) => path.endsWith(`/${end}`) && folderOf(path) === address);
  if (!found) throw new Error(`no ${end} at ${address}`);
  return found;
}
