import { Document, Page, renderToBuffer, Text, View } from "@react-pdf/renderer";
import { INK, INK_2, MARGIN, RULE, SHADE } from "@/lib/reports/pdf/looks";
import { loadPaperFonts, PAPER_FONTS } from "@/lib/reports/pdf/paperFonts";
import { paperText } from "@/lib/reports/pdf/paperText";
import type { BoardPage } from "@/lib/view/planBoard";
import type { DocTable } from "@/lib/view/planRequest";
import {
  cellText,
  lineSheet,
  planSheet,
  REQUEST_CAUTIONS,
  type RequestSheet,
  requestedLines,
  SIGNING_ROLES,
} from "@/lib/view/requestWords";
import { day } from "@/lib/view/time";

const SIZE = 8;
/** Shares of a table's width. */
const WIDTHS = { text: 2, number: 1.2, date: 1.2 } as const;

/** The capital request of a plan on paper: the plan, then each line it asks money for, with room to sign. */
export async function requestPdf(page: BoardPage): Promise<Uint8Array<ArrayBuffer>> {
  const sheets = [planSheet(page), ...requestedLines(page).map((line) => lineSheet(page, line))];
  const duties = page.view.lines.flatMap((line) =>
    line.duties.map(({ title, dueOn }) => `${line.code}: ${title}, ${day(dueOn)}`),
  );
  await loadPaperFonts();
  const bytes = await renderToBuffer(
    <Document title={sheets[0]?.title ?? ""} author="Ebbline" creator="Ebbline" producer="Ebbline">
      {sheets.map((sheet, place) => (
        <Page
          key={sheet.title}
          size="A4"
          orientation="landscape"
          style={{ fontFamily: PAPER_FONTS, fontSize: SIZE, color: INK, lineHeight: 1.25, padding: MARGIN }}
        >
          <Head sheet={sheet} />
          {place === 0 && duties.length > 0 ? (
            <Points title="Safety and legal dates come first, whatever the loss is" points={duties} />
          ) : null}
          {sheet.tables.map((table) => (
            <Table key={table.title} table={table} />
          ))}
          {place === 0 ? <Points title="Cautions" points={REQUEST_CAUTIONS} /> : null}
          <Signatures />
        </Page>
      ))}
    </Document>,
  );
  return Uint8Array.from(bytes);
}

function Head({ sheet: { title, about, sentences } }: { readonly sheet: RequestSheet }) {
  return (
    <>
      <View style={{ borderTopWidth: 1.6, borderBottomWidth: 0.6, borderColor: INK, paddingVertical: 3 }}>
        <Text style={{ fontSize: SIZE + 5, fontWeight: 600, lineHeight: 1.3 }}>{paperText(title)}</Text>
        <Text>{paperText(about)}</Text>
      </View>
      {sentences.map((sentence) => (
        <Text key={sentence} style={{ marginTop: 4 }}>
          {paperText(sentence)}
        </Text>
      ))}
    </>
  );
}

function Points({ title, points }: { readonly title: string; readonly points: readonly string[] }) {
  return (
    <View style={{ marginTop: SIZE }} wrap={false}>
      <Text style={{ fontWeight: 600, fontSize: SIZE + 1.5 }}>{title}</Text>
      {points.map((point) => (
        <Text key={point}>{paperText(`• ${point}`)}</Text>
      ))}
    </View>
  );
}

function Table({ table: { title, columns, rows } }: { readonly table: DocTable }) {
  const whole = columns.reduce((sum, { kind }) => sum + WIDTHS[kind], 0);
  const box = (kind: keyof typeof WIDTHS) =>
    ({
      ...{ width: `${(100 * WIDTHS[kind]) / whole}%`, paddingHorizontal: 2, paddingVertical: 1.1 },
      textAlign: kind === "number" ? "right" : "left",
    }) as const;
  const line = { flexDirection: "row", borderBottomWidth: 0.4, borderColor: RULE } as const;
  return (
    <View style={{ marginTop: SIZE }}>
      <View wrap={false} minPresenceAhead={3 * SIZE}>
        <Text style={{ fontWeight: 600, fontSize: SIZE + 1.5, marginBottom: 2 }}>{paperText(title)}</Text>
        <View style={{ ...line, backgroundColor: SHADE, borderTopWidth: 0.8, borderColor: INK_2 }}>
          {columns.map((column) => (
            <Text key={column.title} style={{ ...box(column.kind), color: INK_2 }}>
              {paperText(column.title)}
            </Text>
          ))}
        </View>
      </View>
      {rows.map((row) => (
        <View key={row.join("|")} style={line} wrap={false}>
          {columns.map((column, i) => (
            <Text key={column.title} style={box(column.kind)}>
              {paperText(cellText(row[i] ?? null, column))}
            </Text>
          ))}
        </View>
      ))}
    </View>
  );
}

function Signatures() {
  return (
    <View style={{ flexDirection: "row", gap: 14, marginTop: 30 }} wrap={false}>
      {SIGNING_ROLES.map((role) => (
        <View key={role} style={{ flexGrow: 1, borderTopWidth: 0.6, borderColor: INK, paddingTop: 2 }}>
          <Text>{role}</Text>
          <Text style={{ color: INK_2 }}>Name, signature, day</Text>
        </View>
      ))}
    </View>
  );
}
