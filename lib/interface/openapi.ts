import { z } from "zod";
import type { Operation } from "@/lib/interface/operation";
import { OPERATIONS, ROOT } from "@/lib/interface/operations";
import { PROBLEMS } from "@/lib/interface/problem";
import * as items from "@/lib/interface/shapes/items";
import * as places from "@/lib/interface/shapes/places";
import { money, span } from "@/lib/interface/shapes/values";
import { problem } from "@/lib/interface/shapes/writes";

type Json = Readonly<Record<string, unknown>>;

const schemaAt = (name: string) => `#/components/schemas/${name}`;
const refTo = (name: string) => ({ $ref: schemaAt(name) });

/** What stands on its own in the document, by name; every answer is added to it. */
const NAMED: Readonly<Record<string, z.ZodType>> = {
  ...{ Problem: problem, Money: money, Span: span },
  ...{ Site: places.site, Line: places.line, Machine: places.machine, Axis: places.axis, Unit: places.unit },
  ...{ Part: items.part, SupplyDate: items.supplyDate, StockLot: items.stockLot, Event: items.event },
  ...{ Repair: items.repair, Project: items.project },
};

/** The interface as an OpenAPI 3.1 document, made from the very schemas requests and answers are held to. */
export function openapi() {
  const paths: Record<string, Record<string, unknown>> = {};
  for (const operation of OPERATIONS) {
    const path = `${ROOT}${operation.path}`;
    paths[path] = { ...paths[path], [operation.method.toLowerCase()]: operationOf(operation) };
  }
  return {
    openapi: "3.1.0",
    info: {
      title: "Ebbline",
      version: "1",
      description:
        "Reads and writes what Ebbline holds, in the name of a person and never beyond their rights.",
    },
    security: [{ accessKey: [] }],
    paths,
    components: {
      schemas: schemas(),
      securitySchemes: {
        accessKey: { type: "http", scheme: "bearer", description: "An access key, made under Interface." },
      },
    },
  };
}

function schemas(): Record<string, Json> {
  const registry = z.registry<{ id: string }>();
  for (const [id, schema] of Object.entries(NAMED)) registry.add(schema, { id });
  for (const { answer, answerName } of OPERATIONS) registry.add(answer, { id: answerName });
  const made = z.toJSONSchema(registry, { io: "output", uri: schemaAt });
  return Object.fromEntries(Object.entries(made.schemas).map(([name, schema]) => [name, bare(schema)]));
}

/** A schema as a part of the document, which says itself where it lies and what it is written in. */
function bare(schema: object): Json {
  const { $schema: _, $id: __, ...rest } = schema as Record<string, unknown>;
  return rest;
}

function operationOf(operation: Operation) {
  const { name, title, text, status = 200, answerName, needs, method } = operation;
  const problems = [
    "unreadable",
    "signedOut",
    "forbidden",
    "missing",
    "conflict",
    "invalid",
    "tooOften",
  ] as const;
  return {
    operationId: name,
    summary: title,
    description: `${text} Needs the right "${needs}".`,
    parameters: parametersOf(operation),
    ...bodyOf(operation),
    responses: {
      [status]: {
        description: title,
        content: { "application/json": { schema: refTo(answerName) } },
        ...(method === "GET" ? { headers: READ_HEADERS } : {}),
      },
      ...(method === "GET" ? { 304: { description: "As the caller holds it by If-None-Match." } } : {}),
      ...Object.fromEntries(problems.map((kind) => [PROBLEMS[kind].status, refusal(PROBLEMS[kind].title)])),
      default: refusal("Any other problem"),
    },
  };
}

const READ_HEADERS = {
  ETag: { description: "Of the answer; give it back as If-None-Match.", schema: { type: "string" } },
  "Ebbline-Data-Version": {
    description: "How often the records behind the figures have changed.",
    schema: { type: "integer" },
  },
};

function refusal(description: string) {
  return { description, content: { "application/problem+json": { schema: refTo("Problem") } } };
}

interface Parameter {
  readonly name: string;
  readonly in: "path" | "query" | "header";
  readonly required: boolean;
  readonly description: string;
  readonly schema: Json;
}

/** The parameters of an operation: of its path, its query, and the name of the request for a write. */
export function parametersOf({ path, query, method }: Operation): Parameter[] {
  const { properties = {}, required = [] } = z.toJSONSchema(query, { io: "input" });
  const asked = Object.entries(properties).map(([name, schema]): Parameter => {
    const { description = "", ...rest } = schema as Json & { readonly description?: string };
    return { name, in: "query", required: required.includes(name), description, schema: rest };
  });
  return [...(path.includes("{id}") ? [PATH_ID] : []), ...asked, ...(method === "GET" ? [] : [REQUEST_NAME])];
}

const PATH_ID: Parameter = {
  ...{ name: "id", in: "path", required: true, description: "Id of the thing." },
  schema: { type: "string", format: "uuid" },
};

const REQUEST_NAME: Parameter = {
  ...{ name: "Idempotency-Key", in: "header", required: true },
  description:
    "Name of the request, new for each; the same again with the same body has no second effect and gets the same answer, for 7 days.",
  schema: { type: "string", minLength: 8, maxLength: 200 },
};

function bodyOf({ body }: Operation) {
  if (body === null) return {};
  if (body === "file")
    return { requestBody: { required: true, content: { "application/octet-stream": { schema: {} } } } };
  const schema = bare(z.toJSONSchema(body, { io: "input" }));
  return { requestBody: { required: true, content: { "application/json": { schema } } } };
}
