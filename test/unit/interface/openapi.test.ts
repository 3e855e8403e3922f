import { Validator } from "@seriousme/openapi-schema-validator";
import { expect, it } from "vitest";
import { openapi } from "@/lib/interface/openapi";
import { OPERATIONS } from "@/lib/interface/operations";

const document = JSON.parse(JSON.stringify(openapi())) as ReturnType<typeof openapi>;

it("the interface is an OpenAPI 3.1 document to an independent validator", async () => {
  const validator = new Validator();
  const { valid, errors } = await validator.validate(structuredClone(document));
  expect(errors).toBeUndefined();
  expect([valid, validator.version]).toEqual([true, "3.1"]);
});

it("the validator refuses a document with a fault in it", async () => {
  const { valid } = await new Validator().validate({
    ...structuredClone(document),
    openapi: "3.1.0",
    paths: [],
  });
  expect(valid).toBe(false);
});

it("each operation stands in it once, and everything it points to is there", () => {
  const names = Object.values(document.paths).flatMap((methods) =>
    Object.values(methods).map((one) => (one as { operationId: string }).operationId),
  );
  expect(names.sort()).toEqual(OPERATIONS.map(({ name }) => name).sort());
  expect(new Set(names).size).toBe(names.length);
  const there = new Set(Object.keys(document.components.schemas));
  const pointed = [...JSON.stringify(document).matchAll(/"\$ref":"#\/components\/schemas\/(\w+)"/g)];
  expect(pointed.length).toBeGreaterThan(names.length);
  expect(pointed.map(([, name = ""]) => name).filter((name) => !there.has(name))).toEqual([]);
});

it("every write asks for the name of the request, and no read does", () => {
  for (const [path, methods] of Object.entries(document.paths))
    for (const [method, one] of Object.entries(methods)) {
      const { parameters } = one as { parameters: { name: string; required: boolean }[] };
      const asks = parameters.some(({ name, required }) => name === "Idempotency-Key" && required);
      expect([path, method, asks]).toEqual([path, method, method !== "get"]);
    }
});
