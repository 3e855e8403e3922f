import { Document, Link, Page, Text, View } from "@react-pdf/renderer";
import { INK, INK_2, MARGIN } from "@/lib/reports/pdf/looks";
import { PaperBlock, type PaperLooks } from "@/lib/reports/pdf/PaperBlock";
import { PartsMark } from "@/lib/reports/pdf/PartsMark";
import { PAPER_FONTS } from "@/lib/reports/pdf/paperFonts";
import { paperText } from "@/lib/reports/pdf/paperText";
import { money, moneyRange } from "@/lib/view/format";
import { basisText, inPairs, shortageText } from "@/lib/view/reportCell";
import type { ReportDocument, ReportHeadline } from "@/lib/view/reportDocument";
import { day } from "@/lib/view/time";

export interface PaperProps extends PaperLooks {
  readonly report: ReportDocument;
  readonly paper: "A4" | "LETTER";
  /** Families of letters, the first that has a letter sets it. */
  /** Told how many sheets it took. */
  readonly onPages: (pages: number) => void;
}

/** A report as sheets of paper. */
export function PaperPages({ report, paper, onPages, ...looks }: PaperProps) {
  const { title, scope, pages, basis, headline, cautions } = report;
  return (
    <Document title={`${title}, ${scope}`} author="Ebbline" creator="Ebbline" producer="Ebbline">
      {pages.map((page, place) => (
        <Page
          key={page.title}
          size={paper}
          style={{
            ...{ fontFamily: PAPER_FONTS, fontSize: looks.size, color: INK, lineHeight: 1.18 },
            ...{ paddingTop: MARGIN, paddingHorizontal: MARGIN, paddingBottom: MARGIN + 14 },
          }}
        >
          <View fixed style={footLooks(paper, looks.size)}>
            <Text style={{ flexGrow: 1, flexShrink: 1, flexBasis: 0 }}>{paperText(basisText(basis))}</Text>
            <Text
              style={{ width: 56, textAlign: "right" }}
              render={({ pageNumber, totalPages }) => {
                if (totalPages) onPages(totalPages);
                return `Page ${pageNumber} of ${totalPages}`;
              }}
            />
          </View>
          <View style={headLooks}>
            <Text style={{ fontSize: looks.size + 6, fontWeight: 600, lineHeight: 1.3 }}>
              {place === 0 ? title : page.title}
            </Text>
            <Text>{paperText(`${scope} · as of ${day(basis.asOf)}`)}</Text>
          </View>
          {place === 0 && headline ? <Headline headline={headline} {...looks} /> : null}
          {inPairs(page.blocks).map((blocks) => (
            <View key={blocks[0]?.title} style={{ flexDirection: "row", gap: 12 }}>
              {blocks.map((block) => (
                <View key={block.title} style={{ flexGrow: 1, flexShrink: 1, flexBasis: 0 }}>
                  <PaperBlock block={block} {...looks} />
                </View>
              ))}
            </View>
          ))}
          {place === pages.length - 1
            ? cautions.map(({ title: name, text }) => (
                <Text key={name} style={{ color: INK_2, fontSize: looks.size - 0.8, marginBottom: 1.5 }}>
                  <Text style={{ fontWeight: 600 }}>{`${name}. `}</Text>
                  {paperText(text)}
                </Text>
              ))
            : null}
        </Page>
      ))}
    </Document>
  );
}

const headLooks = {
  flexDirection: "row",
  justifyContent: "space-between",
  alignItems: "flex-end",
  borderTopWidth: 1.6,
  borderBottomWidth: 0.6,
  borderColor: INK,
  paddingVertical: 3,
  marginBottom: 6,
} as const;

/** Heights of paper, points: 297 mm and 11 inches. */
const HEIGHTS = { A4: 841.89, LETTER: 792 } as const;

/** Placed from the top: what is placed from the bottom and tells its page number is left out by the renderer. */
const footLooks = (paper: PaperProps["paper"], size: number) =>
  ({
    position: "absolute",
    top: HEIGHTS[paper] - MARGIN - 6,
    left: MARGIN,
    right: MARGIN,
    flexDirection: "row",
    justifyContent: "space-between",
    borderTopWidth: 0.6,
    borderColor: INK,
    paddingTop: 2,
    fontSize: Math.min(6.8, size - 0.6),
    color: INK_2,
  }) as const;

function Headline({ headline, address, size }: PaperLooks & { readonly headline: ReportHeadline }) {
  const { loss, shortage, words, sentences, href } = headline;
  const parts = shortageText(headline);
  return (
    <View style={{ marginBottom: size }}>
      {loss === null && words === "" ? null : (
        <Text style={{ fontSize: size + 2, lineHeight: 1.6, marginBottom: 3 }}>
          <Link
            src={`${address}${href}`}
            style={{ color: INK, textDecoration: "none", fontWeight: 600, fontSize: size + 9 }}
          >
            {money(loss?.mean ?? null)}
          </Link>
          {paperText(` expected stop loss in the next twelve months, ${moneyRange(loss)} ${words}.`)}
        </Text>
      )}
      {loss === null || shortage === null || parts === null ? null : (
        <View style={{ flexDirection: "row", marginBottom: 2 }}>
          <PartsMark share={loss.mean > 0 ? shortage / loss.mean : 0} />
          <Text>{paperText(parts)}</Text>
        </View>
      )}
      {sentences.map((sentence) => (
        <Text key={sentence}>{paperText(sentence)}</Text>
      ))}
    </View>
  );
}
