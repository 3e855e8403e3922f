import { KeyFigure } from "@/app/_ui/KeyFigure";
import { KeyFigures } from "@/app/_ui/KeyFigures";
import { PageHeader } from "@/app/_ui/PageHeader";
import { SaveLinks } from "@/app/_ui/SaveLinks";
import { Section } from "@/app/_ui/Section";
import { Tabs } from "@/app/_ui/Tabs";
import { titled } from "@/app/_ui/titled";
import { AmountsHidden } from "@/app/(workspace)/_components/AmountsHidden";
import { SparesTabs } from "@/app/(workspace)/_components/SparesTabs";
import { LevelTable } from "@/app/(workspace)/levels/_components/LevelTable";
import { SurplusTable } from "@/app/(workspace)/levels/_components/SurplusTable";
import { signedInActor } from "@/lib/access/actor";
import { seesAmounts } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { readStockLevels } from "@/lib/data/stockLevels";
import { percent } from "@/lib/view/chance";
import { money } from "@/lib/view/format";
import { count, plainNumber } from "@/lib/view/number";
import {
  bySurplus,
  type LevelRow,
  ordered,
  readTarget,
  surplusEuro,
  surplusOf,
  TARGETS,
} from "@/lib/view/stockLevels";

export const generateMetadata = titled("Levels and surplus");

interface LevelsPageProps {
  readonly searchParams: Promise<{ readonly asOf?: string | string[]; readonly target?: string | string[] }>;
}

export default async function LevelsPage({ searchParams }: LevelsPageProps) {
  const actor = await signedInActor({ amounts: "hidden" });
  const { asOf: asked, target: wanted } = await searchParams;
  const asOf = await readAsOf(actor, typeof asked === "string" ? asked : undefined);
  const target = readTarget(typeof wanted === "string" ? wanted : undefined);
  const rows = await readStockLevels(actor, { asOf, target });
  const amounts = seesAmounts(actor.grants);
  const toOrder = rows.reduce((sum, row) => sum + (ordered(row) ?? 0), 0);
  const blocked = rows.filter(({ levels }) => levels.kind === "unused" || levels.kind === "retires").length;
  const surplus = bySurplus(rows);
  return (
    <>
      <PageHeader
        title="Levels and surplus"
        asOf={asOf}
        lead={`${count(toOrder, "piece")} to order at your sites so that a failure finds the shelf empty with at most ${percent(target)}. A proposal: whoever buys decides.`}
      />
      <SparesTabs current="/levels" />
      {amounts ? null : <AmountsHidden />}
      <KeyFigures>
        <KeyFigure label="To order" value={plainNumber(toOrder)} unit="pieces" />
        <KeyFigure label="Never re-order" value={plainNumber(blocked)} unit="parts at a site" />
        {amounts ? <SurplusWorth surplus={surplus} /> : <SurplusPieces surplus={surplus} />}
      </KeyFigures>
      <Section
        title="Minimum and maximum"
        id="levels"
        lead="By part and site, each site on its own: a spare of another site counts nothing here. A part that retires is never ordered again; what it needs until then comes from other sites, repair or released units."
      >
        <Tabs
          label="Chance of an empty shelf aimed at"
          tabs={TARGETS.map((one) => ({
            label: `At most ${percent(one)}`,
            href: `/levels?target=${one}`,
            current: one === target,
          }))}
        />
        <LevelTable rows={rows} asOf={asOf} />
      </Section>
      <Section
        title="Surplus"
        id="surplus"
        lead="Pieces expected to work beyond those to keep, and all pieces of parts nothing here needs. Offer them to the other sites before they are sold or scrapped; mind export, customs and waste rules."
        actions={<SaveLinks name="surplus" title="Surplus" />}
      >
        <SurplusTable rows={surplus} asOf={asOf} showsPrices={amounts} />
      </Section>
    </>
  );
}

interface SurplusProps {
  readonly surplus: readonly LevelRow[];
}

function SurplusWorth({ surplus }: SurplusProps) {
  const worth = surplus.reduce((sum, row) => sum + (surplusEuro(row) ?? 0), 0);
  const unpriced = surplus.filter((row) => surplusEuro(row) === null).length;
  return (
    <KeyFigure
      label="Surplus"
      value={money(worth)}
      span={unpriced === 0 ? null : `${count(unpriced, "part")} without a price not counted in`}
      date="at the prices on record"
    />
  );
}

function SurplusPieces({ surplus }: SurplusProps) {
  const pieces = surplus.reduce((sum, row) => sum + surplusOf(row), 0);
  return <KeyFigure label="Surplus" value={plainNumber(pieces)} unit="pieces" />;
}
