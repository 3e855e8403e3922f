import { renderToBuffer } from "@react-pdf/renderer";
import { PaperPages } from "@/lib/reports/pdf/PaperPages";
import { loadPaperFonts } from "@/lib/reports/pdf/paperFonts";
import type { ReportDocument } from "@/lib/view/reportDocument";

interface Paper {
  /** Address people open the app by. */
  readonly address: string;
  readonly size: "A4" | "LETTER";
}

/** Size of the text in points, and lines a cell may have: tried in turn until the report takes no more sheets than it may. */
const TRIES = [
  { size: 9, lines: 2 },
  { size: 8, lines: 2 },
  { size: 7.2, lines: 2 },
  { size: 6.6, lines: 2 },
  { size: 6.6, lines: 1 },
] as const;

/** Sheets a report may take: a site's month two, a group's month one, a week two. */
const sheetsFor = ({ kind, pages }: ReportDocument) => (kind === "weekly" ? 2 : pages.length);

/** A report as a PDF with selectable text. */
export async function reportPdf(
  report: ReportDocument,
  { address, size: paper }: Paper,
): Promise<Uint8Array<ArrayBuffer>> {
  await loadPaperFonts();
  let bytes: Uint8Array = new Uint8Array();
  for (const looks of TRIES) {
    let sheets = 0;
    const onPages = (pages: number) => {
      sheets = pages;
    };
    bytes = await renderToBuffer(<PaperPages report={report} {...{ address, paper, onPages, ...looks }} />);
    if (sheets <= sheetsFor(report)) break;
  }
  return Uint8Array.from(bytes);
}
