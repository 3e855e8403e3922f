import { AsOfLink } from "@/app/_ui/AsOfLink";
import { StackBar } from "@/app/_ui/StackBar";
import { SheetBlock } from "@/app/(workspace)/report/_components/SheetBlock";
import { money, moneyRange } from "@/lib/view/format";
import { basisText, inPairs, shortageText } from "@/lib/view/reportCell";
import type { ReportDocument, ReportHeadline } from "@/lib/view/reportDocument";
import { day } from "@/lib/view/time";

/** A report on the screen and on paper: its pages one below the other, each with its head and foot. */
export function Sheets({ report }: { readonly report: ReportDocument }) {
  return report.pages.map((page, place) => <Sheet key={page.title} report={report} place={place} />);
}

interface SheetProps {
  readonly report: ReportDocument;
  /** Of the page, from 0. */
  readonly place: number;
}

function Sheet({ report, place }: SheetProps) {
  const { basis, headline, pages, cautions, title, scope } = report;
  const page = pages[place];
  if (!page) return null;
  const Heading = place === 0 ? "h1" : "h2";
  const isLast = place === pages.length - 1;
  return (
    <section
      className="report-sheet"
      aria-label={`Page ${place + 1}: ${page.title}`}
      data-alone={pages.length === 1 || undefined}
    >
      <header className="double-rule flex flex-wrap items-baseline justify-between gap-x-6 pt-2">
        <Heading className="font-semibold text-xl">{place === 0 ? title : page.title}</Heading>
        <p className="text-sm">
          {scope} · as of {day(basis.asOf)}
        </p>
      </header>
      {place === 0 && headline ? <Headline headline={headline} /> : null}
      {inPairs(page.blocks).map((blocks) => (
        <div key={blocks[0]?.title} className={blocks.length > 1 ? "report-columns" : undefined}>
          {blocks.map((block) => (
            <SheetBlock key={block.title} block={block} />
          ))}
        </div>
      ))}
      {isLast ? (
        <div className="report-note">
          {cautions.map(({ title: name, text }) => (
            <p key={name} className="mt-1 first:mt-0">
              <strong>{name}.</strong> {text}
            </p>
          ))}
        </div>
      ) : null}
      <footer className="report-foot report-note flex flex-wrap justify-between gap-x-6">
        <span>{basisText(basis)}</span>
        <span>
          Page {place + 1} of {pages.length}
        </span>
      </footer>
    </section>
  );
}

function Headline({ headline }: { readonly headline: ReportHeadline }) {
  const { loss, shortage, words, sentences, href } = headline;
  const parts = shortageText(headline);
  return (
    <div>
      {loss === null && words === "" ? null : (
        <p className="text-lg">
          <AsOfLink href={href} className="report-link">
            <strong className="text-2xl">{money(loss?.mean ?? null)}</strong>
          </AsOfLink>{" "}
          expected stop loss in the next twelve months, {moneyRange(loss)} {words}.
        </p>
      )}
      {loss !== null && shortage !== null && parts !== null ? (
        <p className="flex flex-wrap items-baseline gap-x-3 text-sm">
          <StackBar
            parts={[
              { label: "base", value: loss.mean - shortage, look: "solid" },
              { label: "shortage", value: shortage, look: "hatch" },
            ]}
            max={loss.mean}
            text={parts}
          />
          {parts}
        </p>
      ) : null}
      {sentences.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
    </div>
  );
}
