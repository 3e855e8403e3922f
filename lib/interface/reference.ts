import { z } from "zod";
import { parametersOf } from "@/lib/interface/openapi";
import type { Operation } from "@/lib/interface/operation";
import { ROOT } from "@/lib/interface/operations";

/** A field of a request or an answer, for people. */
export interface ReferenceField {
  /** With its way from the top: `items[].figures.score`. */
  readonly name: string;
  readonly kind: string;
  readonly text: string;
}

/** An operation, for people. */
export interface ReferenceEntry {
  readonly name: string;
  readonly method: string;
  readonly path: string;
  readonly title: string;
  readonly text: string;
  readonly needs: string;
  readonly parameters: readonly ReferenceField[];
  /** Fields of its JSON body; "file" is bytes as they are, null nothing. */
  readonly body: readonly ReferenceField[] | "file" | null;
  readonly answer: readonly ReferenceField[];
  readonly example: string;
}

interface Shape {
  readonly type?: string | readonly string[];
  readonly format?: string;
  readonly description?: string;
  readonly enum?: readonly unknown[];
  readonly const?: unknown;
  readonly default?: unknown;
  readonly anyOf?: readonly Shape[];
  readonly items?: Shape;
  readonly properties?: Readonly<Record<string, Shape>>;
  readonly required?: readonly string[];
}

/** An operation as the page of the interface shows it, from the schemas it is run with. */
export function referenceEntry(operation: Operation, base: string): ReferenceEntry {
  const { name, method, title, text, needs, body, answer } = operation;
  const path = `${ROOT}${operation.path}`;
  return {
    ...{ name, method, path, title, text, needs },
    parameters: parametersOf(operation).map(
      ({ name: parameter, in: place, required, description, schema }) => ({
        name: parameter,
        kind: `${place}, ${kindOf(schema as Shape)}${required ? "" : ", optional"}`,
        text: description,
      }),
    ),
    body:
      body === null || body === "file" ? body : fieldsOf(z.toJSONSchema(body, { io: "input" }) as Shape, ""),
    answer: fieldsOf(z.toJSONSchema(answer, { io: "output" }) as Shape, ""),
    example: exampleOf(operation, `${base}${path}`),
  };
}

/** What is in a shape, one row a field; an amount or a span is one field. */
function fieldsOf(shape: Shape, above: string): ReferenceField[] {
  const inner = insideOf(shape);
  return Object.entries(inner.properties ?? {}).flatMap(([key, field]) => {
    const name = above === "" ? key : `${above}.${key}`;
    const optional = inner.required?.includes(key) === false || field.default !== undefined;
    const row = {
      name,
      kind: `${kindOf(field)}${optional ? ", optional" : ""}`,
      text: field.description ?? insideOf(field).description ?? "",
    };
    const list = insideOf(field).items;
    return [row, ...fieldsOf(list ?? field, list ? `${name}[]` : name)];
  });
}

/** What a field is where it is not null. */
function insideOf(shape: Shape): Shape {
  return shape.anyOf?.find(({ type }) => type !== "null") ?? shape;
}

function kindOf(shape: Shape): string {
  const inner = insideOf(shape);
  const orNull = inner === shape ? "" : " or null";
  if (inner.const !== undefined) return `${String(inner.const)}${orNull}`;
  if (inner.enum) return `one of ${inner.enum.join(", ")}${orNull}`;
  if (inner.type === "array") return `list${orNull}`;
  const types = [inner.type ?? []].flat().map((type) => (type === "string" ? "text" : type));
  return `${inner.format ?? (types.join(" or ") || "any")}${orNull}`;
}

const EXAMPLE_ID = "01907a3e-6f2b-7c41-9d0e-5b8a2f4c6d10";

/** The call as a line for a shell. */
function exampleOf({ method, path, query, body }: Operation, address: string): string {
  const { properties = {}, required = [] } = z.toJSONSchema(query, { io: "input" });
  const wanted = Object.keys(properties).filter((key) => required.includes(key));
  const asked = wanted.map((key) => `${key}=${key === "fileName" ? "stock.csv" : "stock"}`).join("&");
  const url = address.replace("{id}", EXAMPLE_ID) + (asked === "" ? "" : `?${asked}`);
  const parts = ['curl -H "Authorization: Bearer $EBBLINE_KEY"'];
  if (method !== "GET") parts.push(`-X ${method} -H "Idempotency-Key: $(uuidgen)"`);
  if (body === "file") parts.push("--data-binary @stock.csv");
  else if (body !== null) parts.push(`-H "Content-Type: application/json" -d @${path.split("/")[1]}.json`);
  return `${parts.join(" ")} "${url}"`;
}
