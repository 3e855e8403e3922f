"use client";

import { useRouter } from "next/navigation";
import { EntryForm } from "@/app/_ui/EntryForm";
import { TextField } from "@/app/_ui/field/TextField";
import { mergeTheseParts } from "@/app/(workspace)/parts/merge/actions";

interface Props {
  readonly keptId: string;
  readonly otherId: string;
  /** What the preview counted. */
  readonly seen: string;
}

/** Merges what was shown, with the reason. */
export function MergeForm({ keptId, otherId, seen }: Props) {
  const router = useRouter();
  return (
    <EntryForm
      submit="Merge them"
      save={(text) => mergeTheseParts({ keptId, otherId, seen, reason: text("reason") })}
      onSaved={() => router.push("/parts/numbers#merged")}
    >
      {(errorOf) => (
        <TextField
          name="reason"
          label="How you know that they are one"
          required
          maxLength={400}
          autoComplete="off"
          error={errorOf("reason")}
        />
      )}
    </EntryForm>
  );
}
