import { useState, useTransition } from "react";
import { Button } from "@/app/_ui/Button";
import { FormMessage } from "@/app/_ui/FormMessage";
import { SelectField } from "@/app/_ui/field/SelectField";
import { teachThisWord } from "@/app/(workspace)/import/sources/actions";
import { type OpenWord, wordKind } from "@/lib/view/importSource";
import { count } from "@/lib/view/number";
import { scoreWord } from "@/lib/view/partNumbers";

interface Props {
  readonly sourceId: string;
  readonly word: OpenWord;
  readonly onTaught: (meaning: string, wordId: string) => void;
}

/** One word and what it means; the likeliest meaning is proposed, a person confirms it. */
export function WordForm({ sourceId, word, onTaught }: Props) {
  const { kind, within, written, rows, suggestions, choices } = word;
  const [meaning, setMeaning] = useState(suggestions[0]?.code ?? "");
  const [reason, setReason] = useState("");
  const [pending, start] = useTransition();
  const labels = new Map(choices.map(({ value, label }) => [value, label]));
  const teach = () =>
    start(async () => {
      const answer = await teachThisWord({ sourceId, kind, within, written, meaning });
      setReason(answer.ok ? "" : answer.error.reason);
      if (answer.ok) onTaught(labels.get(meaning) ?? meaning, answer.value.wordId);
    });
  return (
    <>
      <p>
        <span className="font-semibold">{written}</span>{" "}
        <span className="text-ink-2">
          {wordKind(word)}, {count(rows, "row")}
        </span>
      </p>
      {suggestions.length > 0 ? (
        <p className="text-ink-2 text-sm">
          {suggestions
            .map(({ code, score, why }) => `${labels.get(code) ?? code}: ${why} (${scoreWord(score)})`)
            .join(" · ")}
        </p>
      ) : null}
      <div className="no-print mt-1 flex flex-wrap items-end gap-3">
        <SelectField
          label={`What ${written} means`}
          name="meaning"
          value={meaning}
          empty="Choose"
          choices={choices}
          onChange={({ target }) => setMeaning(target.value)}
        />
        <Button aria-disabled={pending || meaning === ""} onClick={() => !pending && meaning && teach()}>
          That is it
        </Button>
      </div>
      <FormMessage kind="problem">{reason}</FormMessage>
    </>
  );
}
