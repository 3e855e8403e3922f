import { AsOfLink } from "@/app/_ui/AsOfLink";
import { Notice } from "@/app/_ui/Notice";
import { Section } from "@/app/_ui/Section";
import { REGISTERS, type RegisterKey } from "@/lib/intake/registers";
import type { StagedImport } from "@/lib/view/importView";
import { moment } from "@/lib/view/time";
import { ChangeTable } from "./ChangeTable";
import { LoadBar } from "./LoadBar";
import { Opening } from "./Opening";
import { ProblemTable } from "./ProblemTable";
import { ReadingForm } from "./ReadingForm";
import { RowTable } from "./RowTable";
import { StagedState } from "./StagedState";
import { ThingCounts } from "./ThingCounts";

interface Props {
  readonly batchId: string;
  readonly register: RegisterKey;
  readonly staged: StagedImport;
}

/** A file on its way in: how it was read, what its columns are, what it would do, and the button that does it. */
export function StagedFile({ batchId, register, staged }: Props) {
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
      <Section title="How the file was read">
        <Opening opening={opening} rows={staged.totals.rows} />
      </Section>
      <Section
        title="Which column is what"
        lead="Each column goes into one field, or is left out. Your choices are kept for the next file with the same column names."
      >
        <ReadingForm batchId={batchId} {...{ columns, customs, fields, missing }} />
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
      </Section>
      <Section title="Load">
        <LoadBar batchId={batchId} {...barOf(staged)} />
      </Section>
    </StagedState>
  );
}

function barOf({ totals, leftOut, loadable, customs, missing, things }: StagedImport) {
  return {
    totals,
    leftOut,
    loadable,
    missing,
    openQuestions: customs.filter((custom) => custom.state === "open").length,
    writes: things.reduce((sum, { added, changed }) => sum + added + changed, 0),
  };
}
