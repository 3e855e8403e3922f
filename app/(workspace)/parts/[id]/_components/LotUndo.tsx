"use client";

import { useRouter } from "next/navigation";
import { createContext, type ReactNode, useContext, useState } from "react";
import { FormMessage } from "@/app/_ui/FormMessage";
import { UndoBar } from "@/app/_ui/UndoBar";
import { saveStockLot } from "@/app/(workspace)/parts/[id]/actions";
import type { StoredLot } from "@/lib/view/partDossier";

/** A lot that was changed, and what it takes to take that back. */
export interface LotChange {
  readonly lotId: string;
  readonly name: string;
  readonly before: StoredLot;
  readonly after: StoredLot;
}

const Told = createContext<(change: LotChange) => void>(() => undefined);

/** Tells of a change of a lot, which is then offered to be taken back. */
export const useTellOfChange = () => useContext(Told);

/** Offers to take the last change of a lot back, wherever its row went by it. */
export function LotUndo({ children }: { readonly children: ReactNode }) {
  const router = useRouter();
  const [change, setChange] = useState<LotChange | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const tell = (made: LotChange) => {
    setProblem(null);
    setChange(made);
    router.refresh();
  };
  const undo = async () => {
    if (change === null) return;
    const { lotId, before, after } = change;
    const answer = await saveStockLot({ lotId, seen: after, wanted: before });
    if (answer.ok) router.refresh();
    else setProblem(answer.error.reason);
  };
  return (
    <Told value={tell}>
      {children}
      <FormMessage kind="problem">{problem}</FormMessage>
      <UndoBar
        message={change && `Stock in ${change.name} changed.`}
        onUndo={undo}
        onClose={() => setChange(null)}
      />
    </Told>
  );
}
