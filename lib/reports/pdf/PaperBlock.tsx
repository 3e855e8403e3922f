import { Link, Text, View } from "@react-pdf/renderer";
import { INK, INK_2, RULE, SHADE } from "@/lib/reports/pdf/looks";
import { paperText } from "@/lib/reports/pdf/paperText";
import { SpanMark } from "@/lib/reports/pdf/SpanMark";
import { StageMark } from "@/lib/reports/pdf/StageMark";
import { cellsOf, columnShares, spanScale, standsAtEnd } from "@/lib/view/reportCell";
import type { ReportBlock, ReportCell, ReportList, ReportTable } from "@/lib/view/reportDocument";

export interface PaperLooks {
  /** Address people open the app by. */
  readonly address: string;
  /** Size of the text, points. */
  readonly size: number;
  /** Lines a cell may have; what is longer ends in an ellipsis. */
  readonly lines: number;
}

interface BlockProps extends PaperLooks {
  readonly block: ReportBlock;
}

/** A titled table or list of a report on paper. */
export function PaperBlock({ block, ...looks }: BlockProps) {
  return (
    <View style={{ marginBottom: looks.size }}>
      <Text style={{ fontWeight: 600, fontSize: looks.size + 1.5, marginBottom: 2 }}>{block.title}</Text>
      {block.kind === "table" ? <Table table={block} {...looks} /> : <List list={block} {...looks} />}
      {block.note === null ? null : (
        <Text style={{ color: INK_2, fontSize: looks.size - 0.6, marginTop: 1.5 }}>
          {paperText(block.note)}
        </Text>
      )}
    </View>
  );
}

function Table({ table, address, size, lines }: PaperLooks & { readonly table: ReportTable }) {
  const scale = spanScale(table);
  const shares = columnShares(table);
  const row = { flexDirection: "row", borderBottomWidth: 0.4, borderColor: RULE } as const;
  return (
    <View>
      <View style={{ ...row, backgroundColor: SHADE, borderTopWidth: 0.8, borderColor: INK_2 }}>
        {table.columns.map(({ title, kind }, place) => (
          <View key={title} style={cellBox(shares[place] ?? 0)}>
            <Text
              style={{
                fontSize: size - 0.8,
                color: INK_2,
                flexGrow: 1,
                textAlign: standsAtEnd(kind) ? "right" : "left",
              }}
            >
              {title}
            </Text>
          </View>
        ))}
      </View>
      {table.rows.map((one) => (
        <View key={one.key} style={row} wrap={false}>
          {cellsOf(table, one).map(({ column: { title, kind }, cell, text, href }, place) => (
            <View key={title} style={cellBox(shares[place] ?? 0)}>
              <Mark cell={cell} scale={scale} />
              <Link
                src={`${address}${href}`}
                style={{ color: INK, textDecoration: "none", flexGrow: 1, flexShrink: 1, flexBasis: 0 }}
              >
                <Text
                  style={{
                    textAlign: standsAtEnd(kind) ? "right" : "left",
                    maxLines: lines,
                    textOverflow: "ellipsis",
                    fontWeight: place === 0 ? 600 : 400,
                  }}
                >
                  {paperText(text)}
                </Text>
              </Link>
            </View>
          ))}
        </View>
      ))}
      {table.rows.length === 0 ? <Text style={{ padding: 2 }}>{table.none}</Text> : null}
    </View>
  );
}

/** A cell takes its share of the table's width, whatever stands in it. */
const cellBox = (share: number) =>
  ({
    width: `${100 * share}%`,
    flexDirection: "row",
    alignItems: "flex-start",
    paddingVertical: 1.1,
    paddingHorizontal: 2,
  }) as const;

function Mark({ cell, scale }: { readonly cell: ReportCell; readonly scale: number }) {
  if (cell.kind === "span" && cell.span) return <SpanMark span={cell.span} scale={scale} />;
  if (cell.kind === "stage" && cell.stage) return <StageMark stage={cell.stage} />;
  return null;
}

function List({ list, address, lines }: PaperLooks & { readonly list: ReportList }) {
  if (list.items.length === 0) return <Text>{list.none}</Text>;
  return list.items.map(({ text, href }, place) => (
    <View key={text} style={{ flexDirection: "row", marginBottom: 1.5 }} wrap={false}>
      <Text style={{ width: 14 }}>{`${place + 1}.`}</Text>
      <Link
        src={`${address}${href ?? "/report"}`}
        style={{ color: INK, textDecoration: "none", flexGrow: 1, flexShrink: 1, flexBasis: 0 }}
      >
        <Text style={{ maxLines: lines, textOverflow: "ellipsis" }}>{paperText(text)}</Text>
      </Link>
    </View>
  ));
}
