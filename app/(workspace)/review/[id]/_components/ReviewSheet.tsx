import { type Head, SheetList } from "@/app/(workspace)/review/[id]/_components/SheetList";
import { SheetRest } from "@/app/(workspace)/review/[id]/_components/SheetRest";
import { dateKindName } from "@/lib/view/datesAhead";
import { plainNumber } from "@/lib/view/number";
import { baseWords, worseWords } from "@/lib/view/review";
import { buyTotals, shownBuy } from "@/lib/view/reviewBuys";
import { aboutAction, actionStateWords, type ReviewMark, type ReviewRecord } from "@/lib/view/reviewRecord";
import { movedFigures, reviewLead, whyText } from "@/lib/view/reviewWords";
import { day, distance } from "@/lib/view/time";

interface ShownRecord {
  readonly record: ReviewRecord;
  readonly showsAmounts: boolean;
}

interface ReviewSheetProps extends ShownRecord {
  readonly mark: ReviewMark;
}

/** A held review as it was closed, for reading and for at most two sheets of paper. */
export function ReviewSheet({ mark, record, showsAmounts }: ReviewSheetProps) {
  const { figures } = record;
  const { asOf, siteCode, siteName, base, engine } = figures;
  return (
    <article className="review-sheet">
      <header className="double-rule pt-2">
        <h1 className="font-semibold text-xl">{`Weekly review of ${siteCode} ${siteName}, ${day(asOf)}`}</h1>
        <p>{reviewLead(record, asOf)}</p>
        <p className="review-note">
          {`Compared with ${day(base.asOf)}: ${baseWords(base)}. Opened by ${mark.openedBy}, closed by ${mark.closedBy}; kept as shown then.`}
        </p>
      </header>
      <Worse record={record} showsAmounts={showsAmounts} />
      <Dates record={record} />
      <Actions record={record} />
      <Buys record={record} showsAmounts={showsAmounts} />
      <SheetRest record={record} />
      <footer className="review-note border-ink border-t pt-1">
        {`Data as of ${day(asOf)} · engine ${engine} · estimates from sparse records, given without guarantee; they never justify running an unsafe machine.`}
      </footer>
    </article>
  );
}

function Worse({ record: { figures }, showsAmounts }: ShownRecord) {
  const end = (text: string) => ({ text, end: true });
  const lossHere = <T,>(one: T): T[] => (showsAmounts ? [one] : []);
  return (
    <SheetList
      title="What got worse, and why"
      none="Nothing passed the threshold."
      note={worseWords(showsAmounts)}
      most={10}
      heads={[
        "Part",
        end("No-spare chance"),
        ...lossHere(end("Loss here, € a year")),
        end("Usable here"),
        "Why",
      ]}
      rows={figures.worse.map((part) => {
        const { noSpare, loss, usable } = movedFigures(part);
        const both = ({ before, after }: typeof loss) => `${before} → ${after}`;
        return {
          key: part.poolId,
          cells: [part.number, both(noSpare), ...lossHere(both(loss)), both(usable), whyText(part)],
        };
      })}
    />
  );
}

function Dates({ record: { figures } }: { readonly record: ReviewRecord }) {
  return (
    <SheetList
      title="Orders and repairs that end"
      none="No such day within 90 days."
      most={8}
      heads={["Of", "What", "Day", "When", { text: "Units here", end: true }]}
      rows={figures.dates.map(({ key, of, kind, on, units }) => ({
        key,
        cells: [
          of,
          dateKindName(kind),
          day(on),
          distance(on, figures.asOf),
          units === null ? "–" : plainNumber(units),
        ],
      }))}
    />
  );
}

function Actions({ record: { actions, figures } }: { readonly record: ReviewRecord }) {
  return (
    <SheetList
      title="Actions"
      none="None."
      most={12}
      heads={["Action", "About", "Who", "Due", "State"]}
      rows={actions.map((action) => ({
        key: action.id,
        cells: [
          action.text,
          aboutAction(action, figures.siteCode).text,
          action.owner.name,
          day(action.dueOn),
          [actionStateWords(action, figures.asOf), action.reason].filter(Boolean).join(": "),
        ],
      }))}
    />
  );
}

function Buys({ record: { buys }, showsAmounts }: ShownRecord) {
  const priced = <T,>(...two: readonly T[]): readonly T[] => (showsAmounts ? two : []);
  return (
    <SheetList
      title="Purchase list"
      none="Nothing to buy."
      note={buys.length === 0 || !showsAmounts ? null : buyTotals(buys)}
      most={8}
      heads={[
        "Part",
        { text: "Pieces", end: true },
        "Why",
        "Order by",
        "Supply stage",
        ...priced<Head>({ text: "Price of a piece", end: true }, "Price of"),
      ]}
      rows={buys.map((buy) => {
        const { quantity, orderBy, stage, price, pricedOn } = shownBuy(buy);
        return {
          key: buy.id,
          cells: [buy.number, quantity, buy.reason, orderBy, stage, ...priced(price, pricedOn)],
        };
      })}
    />
  );
}
