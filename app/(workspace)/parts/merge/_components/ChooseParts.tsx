"use client";

import { useRouter } from "next/navigation";
import { useState } from "react";
import { Button } from "@/app/_ui/Button";
import { SelectField } from "@/app/_ui/field/SelectField";
import type { NamedPart } from "@/lib/view/partNumbers";

interface Props {
  readonly parts: readonly NamedPart[];
  readonly keep: string;
  readonly other: string;
}

/** The part that counts and the one that goes into it; their preview is an address of its own. */
export function ChooseParts({ parts, keep, other }: Props) {
  const router = useRouter();
  const [kept, setKept] = useState(keep);
  const [gone, setGone] = useState(other);
  const choices = parts.map(({ id, maker, number }) => ({ value: id, label: `${maker} ${number}` }));
  const show = () => router.push(`/parts/merge?keep=${kept}&other=${gone}`);
  const ready = kept !== "" && gone !== "" && kept !== gone;
  return (
    <div className="no-print grid items-end gap-3 sm:grid-cols-[1fr_1fr_auto]">
      <SelectField
        label="Counts"
        name="keep"
        required
        value={kept}
        empty="Choose a part"
        choices={choices}
        onChange={({ target }) => setKept(target.value)}
      />
      <SelectField
        label="Is the same and goes into it"
        name="other"
        required
        value={gone}
        empty="Choose a part"
        choices={choices}
        onChange={({ target }) => setGone(target.value)}
      />
      <Button aria-disabled={!ready} onClick={() => ready && show()}>
        Show what would move
      </Button>
    </div>
  );
}
