import http from "node:http";
import type { AddressInfo } from "node:net";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { dressAnswers } from "@/lib/access/everyAnswer";

const { emit } = http.Server.prototype;
let isSecure = true;
let server: http.Server;

beforeAll(async () => {
  dressAnswers(() => isSecure);
  server = http.createServer((request, answer) => {
    if (request.url === "/lines") answer.setHeader("Content-Security-Policy", "of the page");
    if (request.url === "/api/words/de.js")
      answer.writeHead(200, { "Cache-Control": "public, max-age=31536000" });
    if (request.url === "/api/none") answer.statusCode = 404;
    answer.end("said");
  });
  await new Promise<void>((ready) => server.listen(0, "127.0.0.1", ready));
});
afterAll(async () => {
  http.Server.prototype.emit = emit;
  await new Promise((done) => server.close(done));
});

function ask(path: string, method = "GET"): Promise<http.IncomingMessage> {
  const { port } = server.address() as AddressInfo;
  return new Promise((resolve, reject) => {
    const asked = http.request({ host: "127.0.0.1", port, path, method }, (answer) =>
      resolve(answer.resume()),
    );
    asked.once("error", reject).end();
  });
}

describe("every answer", () => {
  test.each(["/api/v1/parts", "/api/none", "/_next/static/a.js", "/icon.svg", "/lines"])(
    "to %s is not sniffed, framed or told of to others",
    async (path) => {
      const { headers } = await ask(path);
      expect(headers).toMatchObject({
        "x-content-type-options": "nosniff",
        "x-frame-options": "DENY",
        "referrer-policy": "same-origin",
        "cross-origin-resource-policy": "same-origin",
        "strict-transport-security": "max-age=31536000; includeSubDomains",
      });
    },
  );

  test("that is data may load and run nothing, and is kept nowhere", async () => {
    const { headers } = await ask("/api/none");
    expect(headers["content-security-policy"]).toBe(
      "default-src 'none'; object-src 'none'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
    );
    expect(headers["cache-control"]).toBe("no-store");
  });

  test("keeps what it says of itself", async () => {
    expect((await ask("/lines")).headers["content-security-policy"]).toBe("of the page");
    expect((await ask("/api/words/de.js")).headers["cache-control"]).toBe("public, max-age=31536000");
    expect((await ask("/icon.svg")).headers["cache-control"]).toBeUndefined();
  });

  test("over plain http does not bind the browser to https", async () => {
    isSecure = false;
    expect((await ask("/lines")).headers["strict-transport-security"]).toBeUndefined();
    isSecure = true;
  });
});

test.each(["TRACE", "PROPFIND"])("%s is refused before anything looks at it", async (method) => {
  const answer = await ask("/lines", method);
  expect(answer.statusCode).toBe(405);
  expect(answer.headers["x-content-type-options"]).toBe("nosniff");
  expect(answer.headers["content-security-policy"]).not.toBe("of the page");
});
