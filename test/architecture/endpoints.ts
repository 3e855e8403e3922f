import type { Module } from "./sources";
import { type Node, walk } from "./walk";

/** Data files that serve without an actor, each with its reason. */
export const withoutActor: Readonly<Record<string, string>> = {
  "lib/data/client.ts": "gives the connection, not data",
  "lib/data/lookBack.ts": "says as of when the database is read, not what is read",
  "lib/data/standing.ts": "counts what waits and failed for who watches the machine, and names nothing",
  "lib/data/health.ts": "tells machines whether the database answers, and nothing else",
};

/** Route handlers open to the signed-out, each with its reason. */
export const openRoutes: Readonly<Record<string, string>> = {
  "app/api/auth/[...all]/route.ts": "is the sign-in itself",
  "app/api/calendar/[token]/route.ts": "is opened by the secret address of a person's own calendar",
  "app/api/first-admin/route.ts": "is opened by a one-time link while nobody can sign in",
  "app/api/invitation/route.ts": "is opened by the one-time link of somebody who was invited",
  "app/api/health/route.ts": "tells machines whether the app is up",
  "app/api/metrics/route.ts": "is opened by a token of the environment, and without one shut",
  "app/api/reading/route.ts": "lets somebody at the sign-in page choose the language of the device",
  "app/api/words/[file]/route.ts": "holds the words of a language, and no data",
  "app/api/v1/openapi.json/route.ts": "says what the interface does, and holds no data",
};

/** Exports of a module: name, and the expression or function behind it. */
function exportsOf({ body }: Module): { name: string; value: Node | undefined }[] {
  return (body.body as Node[]).flatMap((statement) => {
    if (statement.type === "ExportAllDeclaration" || statement.type === "ExportDefaultDeclaration")
      return [{ name: statement.type, value: undefined }];
    if (statement.type !== "ExportNamedDeclaration" || statement.exportKind === "type") return [];
    const declaration = statement.declaration as Node | null;
    if (!declaration) return [{ name: "a list of names", value: undefined }];
    if (declaration.type !== "VariableDeclaration")
      return [{ name: nameOf(declaration.id), value: declaration }];
    return (declaration.declarations as Node[]).map(({ id, init }) => ({
      name: nameOf(id),
      value: (init as Node | null) ?? undefined,
    }));
  });
}

const nameOf = (node: unknown) => String((node as Node | null)?.name ?? "?");

/** Exports of an actions file that are not made by `action({…})`, and a missing "use server". */
export function unguardedActions(module: Module): string[] {
  const [first] = module.body.body as Node[];
  const says = first?.directive === "use server" ? [] : [`${module.path}: does not begin with "use server"`];
  const bare = exportsOf(module).filter(({ value }) => !isActionCall(value));
  return [...says, ...bare.map(({ name }) => `${module.path}: ${name} is not made by action({…})`)];
}

function isActionCall(value: Node | undefined): boolean {
  if (value?.type !== "CallExpression" || nameOf(value.callee) !== "action") return false;
  return (value.arguments as Node[])[0]?.type === "ObjectExpression";
}

/** "use server" anywhere but at the head of an actions file opens an endpoint nobody guards. */
export function strayServerFunctions({ path, body }: Module): string[] {
  if (/^app\/.*\/actions\.ts$/.test(path)) return [];
  let found = false;
  walk(body, (node) => {
    if (node.directive === "use server") found = true;
  });
  return found ? [`${path}: "use server" outside an actions file`] : [];
}

const FUNCTIONS = ["FunctionDeclaration", "ArrowFunctionExpression", "FunctionExpression"];

/**
 * Exported functions of the files of lib/data that pages may import, and whose first parameter is neither
 * `actor: Actor` nor a transaction, which only `change(actor, …)` hands out.
 */
export function unscopedReads(module: Module): string[] {
  if (Object.keys(withoutActor).some((start) => module.path.startsWith(start))) return [];
  return exportsOf(module)
    .filter(({ value }) => mayAnswer(value) && !isScoped(functionIn(value)))
    .map(({ name }) => `${module.path}: ${name} does not take actor: Actor first`);
}

/** Whether an export can be called: a function, one wrapped in a call such as cache(), or a list of names. */
function mayAnswer(value: Node | undefined): boolean {
  return value === undefined || functionIn(value) !== undefined;
}

function functionIn(value: Node | undefined): Node | undefined {
  if (!value) return undefined;
  if (FUNCTIONS.includes(value.type)) return value;
  if (value.type !== "CallExpression") return undefined;
  return (value.arguments as Node[]).find(({ type }) => FUNCTIONS.includes(type));
}

function isScoped(found: Node | undefined): boolean {
  const [first] = (found?.params as Node[] | undefined) ?? [];
  const written = (first?.typeAnnotation as Node | undefined)?.typeAnnotation as Node | undefined;
  const type = nameOf(written?.typeName);
  return (
    (/^_?actor$/.test(nameOf(first)) && type === "Actor") ||
    (nameOf(first) === "tx" && type === "Transaction")
  );
}

/** Handlers of a route that never ask who is there. */
export function unguardedHandlers(module: Module): string[] {
  if (module.path in openRoutes) return [];
  return exportsOf(module)
    .filter(({ name, value }) => /^[A-Z]+$/.test(name) && !asksWho(value))
    .map(({ name }) => `${module.path}: ${name} does not ask for the actor`);
}

function asksWho(value: Node | undefined): boolean {
  let asks = false;
  if (value)
    walk(value, ({ type, callee }) => {
      if (
        type === "CallExpression" &&
        /^(currentActor|currentReader|signedInActor|actorOfKey)$/.test(nameOf(callee))
      )
        asks = true;
    });
  return asks;
}
