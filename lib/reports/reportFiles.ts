import { createHash } from "node:crypto";
import { reportPdf } from "@/lib/reports/pdf/reportPdf";
import { reportSlides } from "@/lib/reports/reportSlides";
import { reportWorkbook } from "@/lib/reports/reportWorkbook";
import { REPORT_FORMS, type ReportForm } from "@/lib/schema/report";
import type { ReportDocument } from "@/lib/view/reportDocument";

/** A file of a report as it is given out. */
export interface WrittenFile {
  readonly form: ReportForm;
  readonly bytes: Uint8Array<ArrayBuffer>;
  /** SHA-256 of the bytes, hex. */
  readonly hash: string;
}

type Writer = (report: ReportDocument, address: string) => Promise<Uint8Array<ArrayBuffer>>;

const WRITERS = {
  pdf_a4: (report, address) => reportPdf(report, { address, size: "A4" }),
  pdf_letter: (report, address) => reportPdf(report, { address, size: "LETTER" }),
  pptx: reportSlides,
  xlsx: reportWorkbook,
} as const satisfies Record<ReportForm, Writer>;

/**
 * A report in each of its forms.
 *
 * @param address Address people open the app by; every figure leads there.
 */
export async function reportFiles(report: ReportDocument, address: string): Promise<WrittenFile[]> {
  const files: WrittenFile[] = [];
  for (const form of REPORT_FORMS) {
    const bytes = await WRITERS[form](report, address);
    files.push({ form, bytes, hash: createHash("sha256").update(bytes).digest("hex") });
  }
  return files;
}
