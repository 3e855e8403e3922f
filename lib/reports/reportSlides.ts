import PptxGenJS from "pptxgenjs";
import { moneySpan } from "@/lib/view/format";
import { basisText, cellsOf, columnShares, standsAtEnd } from "@/lib/view/reportCell";
import type {
  ReportChart,
  ReportDocument,
  ReportHeadline,
  ReportList,
  ReportTable,
} from "@/lib/view/reportDocument";
import { day } from "@/lib/view/time";
import { inWords } from "@/lib/words/say";

/** Inches; slides of 13.33 by 7.5. */
const LEFT = 0.5;
const WIDTH = 12.33;
const TOP = 1.25;
const FOOT = 7.02;
const CHART_HEIGHT = 2.5;

const INK = "14222B";
const INK_2 = "45545D";
const RULE = "A9B4B7";
const SHADE = "EEF1F1";
/** Told apart by how light they are, so in grey too. */
const BARS = ["BDBAE2", "544CA3", "A9B4B7"];
const FONT = "Arial";

type Slide = PptxGenJS.Slide;

/** A report as slides whose tables and charts can be edited: no picture stands in for a number. */
export async function reportSlides(
  report: ReportDocument,
  address: string,
): Promise<Uint8Array<ArrayBuffer>> {
  const deck = new PptxGenJS();
  deck.layout = "LAYOUT_WIDE";
  deck.title = inWords(`${report.title}, ${report.scope}`);
  deck.author = "Ebbline";
  deck.company = "";
  firstSlide(deck, report, address);
  for (const block of report.pages.flatMap(({ blocks }) => blocks)) {
    const slide = newSlide(deck, report, block.title);
    if (block.kind === "table") tableSlide(deck, slide, { table: block, address });
    else listSlide(slide, block, address);
  }
  return Uint8Array.from((await deck.stream({ compression: true })) as Buffer);
}

function newSlide(deck: PptxGenJS, report: ReportDocument, title: string): Slide {
  const slide = deck.addSlide();
  const text = { fontFace: FONT, color: INK, margin: 0 };
  slide.addText(inWords(title), { ...text, x: LEFT, y: 0.35, w: 8.6, h: 0.5, fontSize: 22, bold: true });
  slide.addText(inWords(`${report.scope} · as of ${day(report.basis.asOf)}`), {
    ...{ ...text, x: 9.2, y: 0.35, w: 3.63, h: 0.5, fontSize: 12, align: "right" },
  });
  slide.addShape("line", { x: LEFT, y: 0.98, w: WIDTH, h: 0, line: { color: INK, width: 1.5 } });
  slide.addText(inWords(basisText(report.basis)), {
    ...{ ...text, color: INK_2, x: LEFT, y: FOOT, w: 11.2, h: 0.3, fontSize: 9 },
  });
  slide.slideNumber = { x: 12.2, y: FOOT, w: 0.63, h: 0.3, fontFace: FONT, fontSize: 9, color: INK_2 };
  return slide;
}

function firstSlide(deck: PptxGenJS, report: ReportDocument, address: string): void {
  const slide = newSlide(deck, report, report.title);
  const text = { fontFace: FONT, color: INK, margin: 0, x: LEFT, w: WIDTH, valign: "top" } as const;
  const { headline } = report;
  if (headline) headlineText(slide, headline, address);
  slide.addText(
    report.cautions.map(({ title, text: words }) => ({
      text: inWords(`${title}. ${words}`),
      options: { breakLine: true, paraSpaceAfter: 6 },
    })),
    { ...text, y: 4.3, h: 2.5, fontSize: 11, color: INK_2 },
  );
}

function headlineText(slide: Slide, { loss, words, sentences, href }: ReportHeadline, address: string): void {
  const text = { fontFace: FONT, color: INK, margin: 0, x: LEFT, w: WIDTH, valign: "top" } as const;
  if (loss)
    slide.addText(
      [
        {
          text: moneySpan(loss),
          options: { bold: true, fontSize: 30, hyperlink: { url: `${address}${href}` }, breakLine: true },
        },
        {
          text: inWords(`expected stop loss in the next twelve months, the range ${words}`),
          options: { fontSize: 14 },
        },
      ],
      { ...text, y: TOP + 0.1, h: 1.2 },
    );
  slide.addText(inWords(sentences.join(" ")), { ...text, y: loss ? 2.75 : TOP + 0.1, h: 1.4, fontSize: 16 });
}

interface TableOnSlide {
  readonly table: ReportTable;
  readonly address: string;
}

function tableSlide(deck: PptxGenJS, slide: Slide, { table, address }: TableOnSlide): void {
  const { chart, rows } = table;
  const isDrawn = chart !== null && rows.length > 0;
  if (isDrawn) drawChart(deck, slide, { table, chart });
  const y = isDrawn ? TOP + CHART_HEIGHT + 0.1 : TOP;
  slide.addTable(tableRows(table, address), {
    ...{ x: LEFT, y, w: WIDTH, fontFace: FONT, fontSize: 10, color: INK, margin: [0.02, 0.06, 0.02, 0.06] },
    colW: columnShares(table).map((share) => WIDTH * share),
    border: { type: "solid", pt: 0.5, color: RULE },
  });
  if (table.note !== null)
    slide.addText(inWords(table.note), {
      ...{ x: LEFT, y: 6.5, w: WIDTH, h: 0.5, margin: 0, valign: "bottom" },
      ...{ fontFace: FONT, fontSize: 9, color: INK_2 },
    });
}

function tableRows(table: ReportTable, address: string): PptxGenJS.TableRow[] {
  const head = table.columns.map(({ title, kind }) => ({
    text: inWords(title),
    options: { bold: true, fill: { color: SHADE }, align: alignOf(kind) },
  }));
  const rows = table.rows.map((row) =>
    cellsOf(table, row).map(({ text, href, column: { kind } }) => ({
      text: inWords(text),
      options: { align: alignOf(kind), color: INK, hyperlink: { url: `${address}${href}` } },
    })),
  );
  if (rows.length > 0) return [head, ...rows];
  return [head, [{ text: inWords(table.none), options: { colspan: table.columns.length } }]];
}

const alignOf = (kind: Parameters<typeof standsAtEnd>[0]): "left" | "right" =>
  standsAtEnd(kind) ? "right" : "left";

interface ChartOnSlide {
  readonly table: ReportTable;
  readonly chart: ReportChart;
}

function drawChart(deck: PptxGenJS, slide: Slide, { table, chart }: ChartOnSlide): void {
  const labels = table.rows.map((row) => inWords(cellsOf(table, row)[0]?.text ?? ""));
  const series = chart.series.map(({ name, values }) => ({
    ...{ name: inWords(name), labels },
    // A gap is an empty point of the chart, as unknown is no zero.
    values: values.slice(0, labels.length).map((value) => value as number),
  }));
  slide.addChart(deck.ChartType.bar, series, {
    ...{ x: LEFT, y: TOP - 0.15, w: WIDTH, h: CHART_HEIGHT, barDir: "col", barGrouping: "clustered" },
    ...{ chartColors: BARS, showLegend: series.length > 1, legendPos: "r", legendFontFace: FONT },
    ...{ catAxisLabelFontFace: FONT, catAxisLabelFontSize: 9, valAxisLabelFontFace: FONT },
    ...{
      valAxisLabelFontSize: 9,
      valAxisLabelFormatCode: "#,##0.##",
      valGridLine: { color: RULE, size: 0.5 },
    },
    ...{
      showTitle: true,
      title: inWords(`${chart.title}, ${chart.unit}`),
      titleFontFace: FONT,
      titleFontSize: 11,
    },
    ...{ showValAxisTitle: false, dataNoEffects: true },
  });
}

function listSlide(slide: Slide, { items, none, note }: ReportList, address: string): void {
  const lines =
    items.length === 0
      ? [{ text: inWords(none) }]
      : items.map(({ text, href }) => ({
          text: inWords(text),
          options: {
            ...{ bullet: { type: "number" as const }, breakLine: true, paraSpaceAfter: 6, color: INK },
            ...(href === null ? {} : { hyperlink: { url: `${address}${href}` } }),
          },
        }));
  slide.addText(lines, {
    ...{
      x: LEFT,
      y: TOP,
      w: WIDTH,
      h: 5.2,
      margin: 0,
      valign: "top",
      fontFace: FONT,
      fontSize: 14,
      color: INK,
    },
  });
  if (note !== null)
    slide.addText(inWords(note), {
      ...{ x: LEFT, y: 6.6, w: WIDTH, h: 0.3, margin: 0, fontFace: FONT, fontSize: 9, color: INK_2 },
    });
}
