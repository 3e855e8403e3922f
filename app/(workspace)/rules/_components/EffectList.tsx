import type { ChangedLine, RuleEffect } from "@/lib/data/ruleEffect";
import { count } from "@/lib/view/number";
import { standingWord } from "@/lib/view/standing";

/** Which lines a rule would change, before it is written. */
export function EffectList({ effect }: { readonly effect: RuleEffect }) {
  const { lines, judged } = effect;
  const moved = lines.filter(({ standing }) => standing !== null);
  return (
    <section aria-label="What it changes" className="border-rule-2 border-y py-3">
      <p role="status" className="font-semibold">
        {moved.length === 0
          ? `No line of ${judged} stands elsewhere by it.`
          : `${count(moved.length, "line")} of ${judged} would stand elsewhere.`}
      </p>
      <ul className="mt-1 list-disc pl-5">
        {moved.map(({ code, name, standing }) => (
          <li key={code}>
            {code} {name}: {standingWord(standing?.before ?? null)} → {standingWord(standing?.after ?? null)}
          </li>
        ))}
      </ul>
      <Verdicts lines={lines} />
    </section>
  );
}

function Verdicts({ lines }: { readonly lines: readonly ChangedLine[] }) {
  const controllers = lines.reduce((sum, line) => sum + line.controllers.length, 0);
  if (controllers === 0) return <p className="text-ink-2 text-sm">No verdict on any controller changes.</p>;
  return (
    <details className="disclosure mt-2">
      <summary>
        Verdicts change on {count(controllers, "controller")} of {count(lines.length, "line")}
      </summary>
      <ul className="mt-1 list-disc pl-5 text-sm">
        {lines.flatMap((line) =>
          line.controllers.map(({ designation, changes }) => (
            <li key={`${line.code} ${designation}`}>
              {designation}:{" "}
              {changes
                .map(({ code, before, after }) => `${code} ${before ?? "silent"} → ${after ?? "silent"}`)
                .join(", ")}
            </li>
          )),
        )}
      </ul>
    </details>
  );
}
