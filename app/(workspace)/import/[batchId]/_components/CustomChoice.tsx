import { useId } from "react";
import type { ImportCustom } from "@/lib/view/importPreview";
import { meaningOf, type WayToRead, waysToRead } from "@/lib/view/importQuestion";
import { plainNumber } from "@/lib/view/number";

interface Props {
  readonly custom: ImportCustom;
  readonly answer: string | null;
  readonly onAnswer: (value: WayToRead["value"] | null) => void;
}

const TITLES = {
  decimalMark: "How numbers are written",
  dateOrder: "How dates are written",
  quantityBasis: "What the quantities count",
} as const;

function explain({ custom, state, ambiguous, total, columns }: ImportCustom): string {
  if (state === "told") return "The values themselves tell; choose otherwise only if you know better.";
  const share = total === 0 ? 0 : Math.round((ambiguous / total) * 100);
  const many = `${plainNumber(ambiguous)} of ${plainNumber(total)} values (${share} %) can be read in two ways`;
  if (custom === "quantityBasis")
    return `${many}: ${columns.map((name) => `“${name}”`).join(", ")} speaks of machines or sets.`;
  return `${many}, and nothing in ${columns.map((name) => `“${name}”`).join(", ")} tells which.`;
}

/** One custom of the file: told by its values, or a question with the values it is about. */
export function CustomChoice({ custom, answer, onAnswer }: Props) {
  const name = useId();
  const ways = waysToRead(custom.custom);
  const isQuestion = custom.state !== "told";
  const found = ways.find((way) => way.value === custom.choice)?.label ?? "";
  return (
    <fieldset
      className={`border-l-4 py-1 pl-4 ${custom.state === "open" ? "border-worse" : "border-rule-2"}`}
    >
      <legend className="font-semibold">
        {TITLES[custom.custom]}
        {custom.state === "open" ? " – please answer" : ""}
      </legend>
      <p className="measure text-ink-2 text-sm">{explain(custom)}</p>
      <div className="mt-1 grid gap-1">
        {isQuestion ? null : (
          <label className="inline-flex min-h-9 items-center gap-2.5">
            <input
              type="radio"
              className="tick"
              name={name}
              checked={answer === null}
              onChange={() => onAnswer(null)}
            />
            As found{answer === null ? `: ${found.toLowerCase()}` : ""}
          </label>
        )}
        {ways.map((way) => (
          <label key={way.value} className="inline-flex min-h-9 items-center gap-2.5">
            <input
              type="radio"
              className="tick"
              name={name}
              checked={answer === way.value}
              onChange={() => onAnswer(way.value)}
            />
            <span>
              {way.label}
              {custom.examples.slice(0, 3).map((example) => (
                <span key={example} className="text-ink-2">
                  {" "}
                  · {example} is {meaningOf(example, way.value) ?? "unreadable"}
                </span>
              ))}
            </span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}
