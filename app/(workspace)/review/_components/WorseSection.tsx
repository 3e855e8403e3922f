import { AsOfLink } from "@/app/_ui/AsOfLink";
import { EmptyState } from "@/app/_ui/EmptyState";
import { RowTable } from "@/app/_ui/RowTable";
import { Section } from "@/app/_ui/Section";
import { StageBadge } from "@/app/_ui/StageBadge";
import type { Desk } from "@/app/(workspace)/review/_components/desk";
import { MovedFigure } from "@/app/(workspace)/review/_components/MovedFigure";
import { RowButtons } from "@/app/(workspace)/review/_components/RowButtons";
import { WhySteps } from "@/app/(workspace)/review/_components/WhySteps";
import { count } from "@/lib/view/number";
import { baseWords, type ReviewFigures, type WorsePart, worseWords } from "@/lib/view/review";
import { movedFigures, worseText } from "@/lib/view/reviewWords";
import { stageBadge } from "@/lib/view/stage";
import { day } from "@/lib/view/time";

interface WorseSectionProps {
  readonly desk: Desk;
  readonly figures: ReviewFigures;
}

/** Only what got worse since the last review, each with what moved it. */
export function WorseSection({ desk, figures }: WorseSectionProps) {
  const { base, worse, better, parts } = figures;
  return (
    <Section
      title="What got worse, and why"
      id="worse"
      lead={`Since ${day(base.asOf)} (${baseWords(base)}). ${worseWords(desk.showsAmounts)} ${count(better, "part")} got better by as much; the other ${count(parts - worse.length - better, "part")} installed here did not move by that much.`}
    >
      {worse.length === 0 ? (
        <EmptyState title={`Nothing got worse since ${day(base.asOf)}`}>
          No part installed here passed the threshold. Dates, repairs and actions below still want a look.
        </EmptyState>
      ) : (
        <RowTable
          caption="Parts that got worse"
          heads={[
            "Part",
            { text: "No-spare chance, group", end: true },
            ...(desk.showsAmounts ? [{ text: "Expected loss here, € a year", end: true }] : []),
            { text: "Usable here, pieces", end: true },
            "Why",
            { text: "To do", print: false },
          ]}
        >
          {worse.map((part) => (
            <Row key={part.poolId} part={part} desk={desk} />
          ))}
        </RowTable>
      )}
    </Section>
  );
}

function Row({ part, desk }: { readonly part: WorsePart; readonly desk: Desk }) {
  const { noSpare, loss, usable } = movedFigures(part);
  const partId = part.href === null ? null : part.poolId;
  return (
    <tr>
      <th scope="row">
        {part.href === null ? (
          part.number
        ) : (
          <AsOfLink href={part.href} className="row-link" data-row-link="">
            {part.number}
          </AsOfLink>
        )}
        <span className="block text-ink-2 text-sm">{part.description}</span>
        <StageBadge {...stageBadge(part.stage)} />
      </th>
      <MovedFigure figure={noSpare} />
      {desk.showsAmounts ? <MovedFigure figure={loss} /> : null}
      <MovedFigure figure={usable} />
      <td>
        <WhySteps part={part} showsAmounts={desk.showsAmounts} />
      </td>
      <RowButtons
        desk={desk}
        about={{ partId, lineId: null, text: "" }}
        name={part.number}
        reason={worseText(part)}
      />
    </tr>
  );
}
