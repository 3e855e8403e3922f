import { expect, it } from "vitest";
import { forgetForwarded } from "@/lib/access/clientAddress";

it("what only a proxy may say is taken from a request, and nothing else", () => {
  const headers = {
    ...{ host: "ebbline.example", cookie: "a=b", "x-forwarded-for": "203.0.113.9", forwarded: "for=1.2.3.4" },
    ...{ "x-forwarded-host": "other.example", "x-forwarded-proto": "https", "x-real-ip": "203.0.113.9" },
  };
  forgetForwarded(headers);
  expect(headers).toEqual({ host: "ebbline.example", cookie: "a=b" });
});
