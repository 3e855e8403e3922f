import { afterAll, beforeAll, expect, it, vi } from "vitest";
import { readBoard } from "@/lib/data/planBoard";
import { makeBoard } from "@/lib/data/planBoardChange";
import { fillByRanking } from "@/lib/data/planBoardFill";
import { paperText } from "@/lib/reports/pdf/paperText";
import { requestPdf } from "@/lib/reports/pdf/requestPdf";
import { requestTables } from "@/lib/view/planRequest";
import { cellText, REQUEST_CAUTIONS, requestedLines, SIGNING_ROLES } from "@/lib/view/requestWords";
import { load } from "@/seed/load";
import { small } from "@/seed/scenarios/small";
import { makeActor } from "@/test/support/actors";
import { type FreshDatabase, freshDatabase } from "@/test/support/database";
import { readPdf, tight } from "@/test/support/readReportFiles";

vi.setConfig({ testTimeout: 240_000, hookTimeout: 240_000 });

let fresh: FreshDatabase;

beforeAll(async () => {
  fresh = await freshDatabase("plan request");
  await load(fresh.url, "small", small());
});

afterAll(() => fresh.close());

it("the request on paper holds every figure of the screen, the cautions and room to sign, a sheet for each line", async () => {
  const admin = await makeActor("admin");
  const made = await makeBoard(admin, { name: "On paper", asOf: "2026-11-30" });
  if (!made.ok) throw new Error(made.error.reason);
  const filled = await fillByRanking(admin, made.value);
  if (!filled.ok) throw new Error(filled.error.reason);
  const page = await readBoard(admin, { planId: made.value.planId, whole: true });
  if (!page) throw new Error("the plan is there");

  const sheets = await readPdf(await requestPdf(page));
  const text = tight(sheets.map((sheet) => sheet.text).join(" "));
  const tables = requestTables(page);
  expect(tables.length).toBeGreaterThan(3);
  for (const { title, columns, rows } of tables) {
    expect(text).toContain(tight(title));
    for (const row of rows)
      for (const [i, value] of row.entries())
        expect(text).toContain(tight(paperText(cellText(value, columns[i]))));
  }
  for (const caution of REQUEST_CAUTIONS) expect(text).toContain(tight(caution));
  const lines = requestedLines(page);
  expect(lines.length).toBeGreaterThan(0);
  for (const { code } of lines) expect(text).toContain(tight(`${code}: ways considered`));
  for (const role of SIGNING_ROLES)
    expect(text.split(tight(`${role} Name, signature, day`))).toHaveLength(lines.length + 2);
});
