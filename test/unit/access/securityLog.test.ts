import { afterEach, expect, test, vi } from "vitest";
import { noteSecurity, noteTrouble } from "@/lib/access/securityLog";

const said: string[] = [];
const stderr = vi.spyOn(process.stderr, "write").mockImplementation((text) => said.push(String(text)) > 0);
afterEach(() => {
  said.length = 0;
});

test("a line of the log cannot be forged by what comes from outside, and says when in UTC", () => {
  const forged = '"}\r\n{"event":"action refused","userId":"somebody else"}\u2028';
  noteSecurity({ event: "action refused", userId: "one", what: forged, why: "role" });
  noteTrouble("action", new Error(`no such column\n${forged}`));
  stderr.mockRestore();
  expect(said).toHaveLength(2);
  for (const line of said) expect(line.match(/\r|\n/g)).toEqual(["\n"]);
  const [refused, trouble] = said.map((line) => JSON.parse(line) as Record<string, string>);
  expect(refused).toMatchObject({ event: "action refused", userId: "one", what: forged });
  expect(refused?.at).toMatch(/^\d{4}-\d{2}-\d{2}T[\d:.]+Z$/);
  expect(trouble?.why).toContain("no such column");
});
