"use client";

import { useRouter } from "next/navigation";
import { EntryForm } from "@/app/_ui/EntryForm";
import { TextareaField } from "@/app/_ui/field/TextareaField";
import { setTheseNulls } from "@/app/(workspace)/import/sources/actions";
import { NULL_WORDS, STAND_INS } from "@/lib/intake/readEmpty";
import type { SourceVersion } from "@/lib/view/importSource";

interface Props {
  readonly sourceId: string;
  readonly version: SourceVersion;
}

const OWN_LIST = [...NULL_WORDS, ...STAND_INS].join("\n");

/** The words and values the system writes for nothing, one a line; an empty list is the product's own. */
export function NullWords({ sourceId, version: { register, registerLabel, version, nullWords } }: Props) {
  const router = useRouter();
  const save = (text: (name: string) => string) => {
    const words = text("words")
      .split("\n")
      .map((word) => word.trim())
      .filter((word) => word !== "");
    const own = words.length === 0 || words.join("\n") === OWN_LIST;
    return setTheseNulls({ sourceId, register, version, nullWords: own ? null : words });
  };
  return (
    <details className="disclosure">
      <summary className="font-semibold text-accent">
        {registerLabel}: {nullWords === null ? "the usual list" : `${nullWords.length} of its own`}
      </summary>
      <div className="mt-2 max-w-xl">
        <EntryForm submit="Keep this list" save={save} onSaved={() => router.refresh()}>
          {(errorOf) => (
            <TextareaField
              name="words"
              label="One word or value a line"
              hint="Emptied, the usual list counts again."
              rows={10}
              defaultValue={nullWords === null ? OWN_LIST : nullWords.join("\n")}
              error={errorOf("nullWords")}
            />
          )}
        </EntryForm>
      </div>
    </details>
  );
}
