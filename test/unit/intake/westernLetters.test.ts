import { expect, it } from "vitest";
import { decodeText, encodeText, pieceDecoder } from "@/lib/intake/textEncoding";

it("reads the euro sign and the dash of Windows-1252, which the platform's decoder loses", () => {
  expect(decodeText(Uint8Array.from([0x80, 0x96, 0xe4]), "windows-1252")).toBe("€–ä");
  expect([...encodeText("€–ä", "windows-1252")]).toEqual([0x80, 0x96, 0xe4]);
});

it("joins letters that two pieces cut", () => {
  const decode = pieceDecoder("utf-8");
  const bytes = encodeText("łóż", "utf-8");
  expect(decode(bytes.subarray(0, 3)) + decode(bytes.subarray(3)) + decode()).toBe("łóż");
});
