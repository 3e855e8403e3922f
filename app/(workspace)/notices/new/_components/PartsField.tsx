import { TextareaField } from "@/app/_ui/field/TextareaField";
import type { NoticeFieldsetProps } from "@/app/(workspace)/notices/new/_components/NoticeFieldset";

const SYNTAX = [
  ["TM-HR-020", "one part, in any spelling"],
  ["Heron R", "all parts of a family"],
  ["TM-HR-*", "* stands for any letters and digits"],
  ["TM-HR-0?0", "? stands for exactly one"],
  ["TM-HR-010..040", "from one number to another"],
  ["!TM-HR-080", "! takes out again"],
] as const;

/** Which parts a notice is of, in a short language of its own, and what was found but is not on record. */
export function PartsField({ draft, change, found, start, problems }: NoticeFieldsetProps) {
  const unknown = found?.unknown ?? [];
  return (
    <div>
      <TextareaField
        label="Parts"
        name="patterns"
        rows={4}
        required
        value={draft.patterns}
        error={problems.patterns}
        onChange={({ target }) => change({ ...draft, patterns: target.value })}
        hint="One entry a line, or parted by commas."
        maxLength={4000}
      />
      <details className="disclosure mt-1 text-sm">
        <summary>How parts can be written</summary>
        <dl className="mt-1 grid grid-cols-[auto_1fr] gap-x-4">
          {SYNTAX.map(([entry, meaning]) => (
            <div key={entry} className="contents">
              <dt>
                <code>{entry}</code>
              </dt>
              <dd className="text-ink-2">{meaning}</dd>
            </div>
          ))}
        </dl>
        <p className="mt-1 text-ink-2">Families on record: {start.families.join(", ")}.</p>
      </details>
      {unknown.length > 0 ? (
        <p className="mt-1 text-sm">Found in the text, not on record: {unknown.join(", ")}.</p>
      ) : null}
    </div>
  );
}
