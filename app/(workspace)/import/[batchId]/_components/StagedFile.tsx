import type { ReactNode } from "react";
import { AsOfLink } from "@/app/_ui/AsOfLink";
import { Notice } from "@/app/_ui/Notice";
import { Section } from "@/app/_ui/Section";
import { REGISTERS, type RegisterKey } from "@/lib/intake/registers";
import type { StagedImport } from "@/lib/view/importView";
import { moment } from "@/lib/view/time";
import { ChangeTable } from "./ChangeTable";
import { FileChoice } from "./FileChoice";
import { LoadBar } from "./LoadBar";
import { Opening } from "./Opening";
import { ProblemTable } from "./ProblemTable";
import { ReadingForm } from "./ReadingForm";
import { RowTable } from "./RowTable";
import { StagedState } from "./StagedState";
import { StaleNotice } from "./StaleNotice";
import { ThingCounts } from "./ThingCounts";
import { VanishedTable } from "./VanishedTable";

interface Props {
  readonly batchId: string;
  readonly register: RegisterKey;
  readonly staged: StagedImport;
  /** The system the file comes from, and what it would do to the figures. */
  readonly source: ReactNode;
  readonly effect: ReactNode;
}

/** A file on its way in: how it was read, what its columns are, what it would do, and the button that does it. */
export function StagedFile({ batchId, register, staged, source, effect }: Props) {
  const { opening, columns, customs, missing, problems, changes, loadedBefore } = staged;
  const fields = REGISTERS[register].fields.map(({ key, label, required }) => ({ key, label, required }));
  return (
    <StagedState>
      {loadedBefore ? (
        <Notice kind="caution" title="This very file is loaded already">
          It was loaded on {moment(loadedBefore.at, "UTC")} UTC, byte for byte the same.{" "}
          <AsOfLink href={`/import/${loadedBefore.id}`}>See what it did</AsOfLink>. Loading it once more
          changes only what was edited since.
        </Notice>
      ) : null}
      {staged.isStale ? <StaleNotice batchId={batchId} /> : null}
      <Section title="How the file was read">
        <Opening opening={opening} rows={staged.totals.rows} />
        <details className="disclosure mt-3">
          <summary className="font-semibold text-accent">Read it another way</summary>
          <FileChoice key={keyOf(opening)} batchId={batchId} {...{ opening, columns, customs }} />
        </details>
      </Section>
      <Section
        title="Which system it comes from"
        lead="Its columns, words for nothing and names of lines and machines are kept for the next file of the same system."
      >
        {source}
      </Section>
      <Section
        title="Which column is what"
        lead="Each column goes into one field, or is left out. Your choices are kept for the next file with the same column names."
      >
        <ReadingForm
          key={columns.map(({ header }) => header).join("|")}
          batchId={batchId}
          {...{ columns, customs, fields, missing }}
        />
      </Section>
      <Section title="Problems by row and column">
        <ProblemTable problems={problems} />
      </Section>
      <Section title="Rows as read">
        <RowTable
          labels={staged.labels}
          rows={staged.rows}
          leftOut={staged.leftOut}
          rowCount={staged.totals.rows}
        />
      </Section>
      <Section title="What would change">
        <ThingCounts things={staged.things} unchangedKnown />
        {changes.count > 0 ? (
          <div className="mt-4">
            <ChangeTable changes={changes} />
          </div>
        ) : null}
        {staged.vanished ? <VanishedTable vanished={staged.vanished} /> : null}
      </Section>
      <Section id="effect" title="What it would do to losses and places">
        {effect}
      </Section>
      <Section title="Load">
        <LoadBar batchId={batchId} {...barOf(staged)} />
      </Section>
    </StagedState>
  );
}

/** The form begins anew where the file is read another way. */
function keyOf({ sheet, encoding, separator, headerRow, headerLines }: StagedImport["opening"]): string {
  return [sheet, encoding, separator, headerRow, headerLines].join(" ");
}

function barOf({ totals, leftOut, loadable, waiting, customs, missing, things }: StagedImport) {
  return {
    totals,
    leftOut,
    loadable,
    waiting,
    missing,
    openQuestions: customs.filter((custom) => custom.state === "open").length,
    writes: things.reduce((sum, { added, changed }) => sum + added + changed, 0),
  };
}
