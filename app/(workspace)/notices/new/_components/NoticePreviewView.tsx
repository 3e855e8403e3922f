import { Button } from "@/app/_ui/Button";
import { Delta } from "@/app/_ui/Delta";
import { Notice } from "@/app/_ui/Notice";
import { RowTable } from "@/app/_ui/RowTable";
import { Section } from "@/app/_ui/Section";
import { StageBadge } from "@/app/_ui/StageBadge";
import { PreviewDates } from "@/app/(workspace)/notices/new/_components/PreviewDates";
import { money } from "@/lib/view/format";
import type { MovedLine, NoticePreview } from "@/lib/view/noticePreview";
import { count, plainNumber, quantity } from "@/lib/view/number";
import { stageBadge } from "@/lib/view/stage";
import { day } from "@/lib/view/time";

interface NoticePreviewViewProps {
  readonly preview: NoticePreview;
  readonly pending: boolean;
  readonly onKeep: () => void;
}

/** What keeping a notice would change, before it is kept. */
export function NoticePreviewView({ preview, pending, onKeep }: NoticePreviewViewProps) {
  const { parts, units, sites, lines, orderByOn, everySite } = preview;
  const where = sites.map(({ code, units: here }) => `${code} ${plainNumber(here)}`).join(", ");
  return (
    <Section title="What it changes">
      <p role="status" className="mb-3 font-semibold text-lg">
        {`${count(parts.length, "part")}, ${count(units, "unit")} in service${where === "" ? "" : `: ${where}`}.`}
      </p>
      {everySite ? null : <Notice kind="info">Units, stock and money of your sites only.</Notice>}
      <Cautions preview={preview} />
      <PartTable parts={parts} />
      <details className="disclosure my-3">
        <summary>{`Units by line: ${count(lines.length, "line")}`}</summary>
        <p>{lines.map(({ code, units: here }) => `${code} ${plainNumber(here)}`).join(" · ")}</p>
      </details>
      <PreviewDates parts={parts} />
      <LossMoves preview={preview} />
      <p className="mt-3">
        {orderByOn === null
          ? "No day to start the order by."
          : `“Start the order by ${day(orderByOn)}” goes into Dates ahead and the calendars.`}
      </p>
      <div className="mt-4">
        <Button kind="primary" aria-disabled={pending} onClick={pending ? undefined : onKeep}>
          {pending ? "Working…" : "Keep this notice"}
        </Button>
        <span className="ml-3 text-ink-2 text-sm">It can be taken back in one step.</span>
      </div>
    </Section>
  );
}

function Cautions({ preview: { odd, empty, withoutSuccessor } }: { readonly preview: NoticePreview }) {
  const all = [
    ...odd,
    ...empty.map((entry) => `${entry} takes no part on record.`),
    ...(withoutSuccessor.length > 0
      ? [`No successor on record fits ${withoutSuccessor.join(", ")}; none is written for them.`]
      : []),
  ];
  if (all.length === 0) return null;
  return (
    <Notice kind="caution" title="Look at these before you keep it">
      <ul className="list-disc pl-5">
        {all.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </Notice>
  );
}

const PART_HEADS = [
  "Part",
  "Family",
  { text: "In service", end: true },
  { text: "Usable now", end: true },
  "Stage now",
  "Stage then",
  "Successor",
];

function PartTable({ parts }: Pick<NoticePreview, "parts">) {
  return (
    <RowTable caption="Parts of the notice" heads={PART_HEADS}>
      {parts.map((part) => (
        <tr key={part.id}>
          <th scope="row">{part.number}</th>
          <td>{part.family ?? ""}</td>
          <td data-align="end">{plainNumber(part.units)}</td>
          <td data-align="end">{quantity(part.usable)}</td>
          <td>
            <StageBadge {...stageBadge(part.stageBefore)} />
          </td>
          <td>
            <StageBadge {...stageBadge(part.stageAfter)} />
          </td>
          <td>{part.successor ? `${part.successor.number}${part.successor.known ? "" : " (new)"}` : ""}</td>
        </tr>
      ))}
    </RowTable>
  );
}

const LINE_HEADS = [
  "Line",
  { text: "Loss a year now", end: true },
  { text: "Then", end: true },
  "Place by loss",
];

function LossMoves({ preview }: { readonly preview: NoticePreview }) {
  const { lossBefore, lossAfter, moved } = preview;
  if (moved.length === 0) return <p>The expected stop loss of no line moves by € 1 a year or more.</p>;
  const more = lossAfter - lossBefore;
  return (
    <>
      <p className="mt-4 mb-2">
        {`Expected stop loss a year: ${money(lossBefore)} now, ${money(lossAfter)} then. `}
        <Delta
          kind={more > 0 ? "worse" : "better"}
          text={`${money(Math.abs(more))} ${more > 0 ? "more" : "less"}`}
        />
      </p>
      <RowTable caption="Lines whose loss moves most" heads={LINE_HEADS}>
        {moved.map((line) => (
          <tr key={line.code}>
            <th scope="row">{line.code}</th>
            <td data-align="end">{money(line.before.mean)}</td>
            <td data-align="end">{money(line.after.mean)}</td>
            <td>{placeWords(line)}</td>
          </tr>
        ))}
      </RowTable>
    </>
  );
}

const placeWords = ({ placeBefore, placeAfter }: MovedLine) =>
  placeBefore === placeAfter ? `${placeBefore}, as now` : `${placeBefore} → ${placeAfter}`;
