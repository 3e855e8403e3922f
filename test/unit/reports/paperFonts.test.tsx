import { Document, Page, renderToBuffer, Text } from "@react-pdf/renderer";
import { expect, it } from "vitest";
import { loadPaperFonts, PAPER_FONTS } from "@/lib/reports/pdf/paperFonts";
import { readPdf } from "@/test/support/readReportFiles";

const paper = async (text: string) => {
  await loadPaperFonts();
  const bytes = await renderToBuffer(
    <Document>
      <Page style={{ fontFamily: PAPER_FONTS }}>
        <Text>{text}</Text>
      </Page>
    </Document>,
  );
  return (await readPdf(bytes))[0]?.text;
};

it("a sign that an earlier paper had as a part of another is still read as itself", async () => {
  expect(await paper("±5")).toBe("±5");
  expect(await paper("−5")).toBe("−5");
});
