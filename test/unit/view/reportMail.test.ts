import { expect, test } from "vitest";
import { issueAddress, issueChoice, issueFileName } from "@/lib/view/reportArchive";
import { reportMail } from "@/lib/view/reportMail";
import { sample } from "@/test/support/reportSample";

const mail = reportMail({ document: sample, issueId: "i-1", address: "https://plant.example" });

test("the mail of a report tells its loss, the decisions it asks for and where it is kept", () => {
  expect(mail.subject).toBe("Monthly report, Nov 2026, VEL Łódź, Říčany, Győr");
  expect(mail.text).toContain("Expected stop loss a year: €\u00a0398\u00a0k (200–760\u00a0k).");
  expect(mail.text).toContain("Decisions asked for:\n- =1+1\n- +1");
  expect(mail.text).toContain("https://plant.example/report/archive/i-1");
  expect(mail.text).toContain("never a reason to run an unsafe machine");
});

test("the mail takes names for names, not for markup", () => {
  expect(mail.html).not.toContain("<script>");
  expect(mail.html).toContain("<li>&lt;script&gt;alert(&quot;x&quot;)&lt;/script&gt;</li>");
  expect(mail.html).toContain('<a href="https://plant.example/report/archive/i-1">');
});

test("a file is named after what it holds, in letters every disk takes", () => {
  expect(issueFileName(sample, "pdf_letter")).toBe("monthly-report-VEL-2026-11-letter.pdf");
  expect(issueFileName({ kind: "weekly", siteCode: "A/B", period: "2026-W48" }, "xlsx")).toBe(
    "weekly-report-A_B-2026-W48.xlsx",
  );
  expect(issueFileName({ ...sample, siteCode: null }, "pptx")).toBe("monthly-report-group-2026-11.pptx");
});

test("a choice of the archive is kept in its address, and what is not known is every one", () => {
  const choice = { kind: "weekly", of: "VEL" } as const;
  expect(issueAddress(choice)).toBe("/report/archive?kind=weekly&of=VEL");
  expect(issueChoice(choice)).toEqual(choice);
  expect(issueChoice({ kind: "yearly", of: "" })).toEqual({ kind: null, of: null });
  expect(issueAddress({ kind: null, of: null })).toBe("/report/archive");
});
