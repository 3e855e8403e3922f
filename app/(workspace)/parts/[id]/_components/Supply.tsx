import { EvidenceMark } from "@/app/_ui/EvidenceMark";
import { KeyFigure } from "@/app/_ui/KeyFigure";
import { KeyFigures } from "@/app/_ui/KeyFigures";
import { Section } from "@/app/_ui/Section";
import { StageBadge } from "@/app/_ui/StageBadge";
import { StaleMark } from "@/app/_ui/StaleMark";
import { Facts } from "@/app/(workspace)/parts/[id]/_components/Facts";
import { percent } from "@/lib/view/chance";
import { evidenceMark } from "@/lib/view/evidence";
import { exactMoney } from "@/lib/view/format";
import { plainNumber } from "@/lib/view/number";
import type { PartDossier } from "@/lib/view/partDossier";
import { isPriceStale, leadText, priceAge, stageReason } from "@/lib/view/partSupply";
import { stageBadge, stageView } from "@/lib/view/stage";
import { day, distance } from "@/lib/view/time";

function Price({ part: { price, asOf } }: { readonly part: PartDossier }) {
  if (price === null) return <KeyFigure label="Price" value="not known" />;
  const age = priceAge(price.pricedOn, asOf);
  return (
    <KeyFigure label="Price of one" value={exactMoney(price.amount, price.currency)}>
      {isPriceStale(price.pricedOn, asOf) ? <StaleMark text="Old price" /> : null} {age}
    </KeyFigure>
  );
}

/** How the part can still be had, until when, from which source, at which price and lead time. */
export function Supply({ part }: { readonly part: PartDossier }) {
  const { stage, dates, asOf } = part;
  const { sentence, standardWord } = stageView(stage);
  const inForce = part.facts.find((fact) => fact.id === part.factInForce);
  const lead = leadText(part.leadWeeks, part.leadWeeksP80);
  return (
    <Section title="How it can still be had" id="supply">
      <p className="mb-1 text-lg">
        <StageBadge {...stageBadge(stage)} />
        {standardWord === null ? null : <span className="text-ink-2"> ({standardWord} in IEC 62402)</span>}
      </p>
      <p className="measure mb-4">
        {sentence} {stageReason(stage, dates, asOf)}{" "}
        {inForce === undefined ? null : (
          <>
            Source: {inForce.source}, about the {inForce.about}, checked {day(inForce.checkedOn)} (
            {distance(inForce.checkedOn, asOf)}). <EvidenceMark {...evidenceMark(inForce.evidence)} long />
          </>
        )}
      </p>
      <KeyFigures>
        <Price part={part} />
        <KeyFigure label="Lead time" value={lead ?? "not known"} assumed={lead === null} />
        <KeyFigure
          label="Repaired units that come back usable"
          value={part.repairYield === null ? "no repair known" : percent(part.repairYield)}
        >
          {part.repairTurnaroundDays === null
            ? null
            : `in ${plainNumber(part.repairTurnaroundDays)} days, door to door`}
        </KeyFigure>
      </KeyFigures>
      <Facts part={part} />
    </Section>
  );
}
