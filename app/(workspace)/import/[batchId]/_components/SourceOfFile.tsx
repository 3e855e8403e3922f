"use client";

import { useRouter } from "next/navigation";
import { useState } from "react";
import { AsOfLink } from "@/app/_ui/AsOfLink";
import { EntryForm } from "@/app/_ui/EntryForm";
import { SelectField } from "@/app/_ui/field/SelectField";
import { TextField } from "@/app/_ui/field/TextField";
import { chooseThisSource } from "@/app/(workspace)/import/actions";
import type { FileSource } from "@/lib/data/importSources";
import type { ChooseSource } from "@/lib/schema/importSource";
import { count } from "@/lib/view/number";

interface Props {
  readonly batchId: string;
  readonly source: FileSource;
}

const NEW = "new";

/** Which system a file comes from: what is known of that system's files is used for it. */
export function SourceOfFile({ batchId, source }: Props) {
  const router = useRouter();
  const [chosen, setChosen] = useState(source.sourceId ?? "");
  const { sources, sites, everySite, openWords } = source;
  const wish = (text: (name: string) => string): ChooseSource["source"] => {
    if (chosen === "") return { kind: "none" };
    if (chosen !== NEW) return { kind: "known", sourceId: chosen };
    return { kind: "new", name: text("name"), siteId: text("siteId") || null };
  };
  return (
    <>
      {source.sourceId ? (
        <p className="mb-3">
          <AsOfLink href={`/import/sources/${source.sourceId}`}>
            {openWords > 0
              ? `${count(openWords, "name or value", "names or values")} of this file to explain`
              : "What is known of this system"}
          </AsOfLink>
        </p>
      ) : null}
      <div className="max-w-xl">
        <EntryForm
          submit="Keep"
          save={(text) => chooseThisSource({ batchId, source: wish(text) })}
          onSaved={() => router.refresh()}
        >
          {(errorOf) => (
            <>
              <SelectField
                name="source"
                label="System"
                value={chosen}
                empty="Not said"
                onChange={({ target }) => setChosen(target.value)}
                choices={[
                  ...sources.map(({ id, name, siteCode }) => ({
                    value: id,
                    label: siteCode === null ? name : `${name} (${siteCode})`,
                  })),
                  { value: NEW, label: "Another one…" },
                ]}
              />
              {chosen === NEW ? (
                <>
                  <TextField
                    name="name"
                    label="Its name"
                    hint="For example: VEL storeroom"
                    required
                    maxLength={80}
                    error={errorOf("source.name")}
                  />
                  <SelectField
                    name="siteId"
                    label="Whose system"
                    choices={[
                      ...(everySite ? [{ value: "", label: "The whole group's" }] : []),
                      ...sites.map(({ id, code }) => ({ value: id, label: code })),
                    ]}
                  />
                </>
              ) : null}
            </>
          )}
        </EntryForm>
      </div>
    </>
  );
}
