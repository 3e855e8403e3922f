import { csvTable } from "@/lib/reports/table/csvTable";
import { jsonTable } from "@/lib/reports/table/jsonTable";
import { xlsxTable } from "@/lib/reports/table/xlsxTable";
import type { ExportFormat, ExportTable } from "@/lib/view/exportTable";

interface Form {
  readonly type: string;
  readonly write: (table: ExportTable) => AsyncGenerator<Buffer>;
}

/** How a list becomes a file of each format. */
export const FILE_FORMS: Readonly<Record<ExportFormat, Form>> = {
  csv: { type: "text/csv; charset=utf-8", write: csvTable },
  xlsx: {
    type: "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
    write: (table) => xlsxTable(table),
  },
  json: { type: "application/json", write: jsonTable },
};
