"use client";

import { Dialog } from "@/app/_ui/Dialog";
import { orOffline } from "@/app/_ui/draft/orOffline";
import { EntryForm } from "@/app/_ui/EntryForm";
import { NumberField } from "@/app/_ui/field/NumberField";
import { SelectField } from "@/app/_ui/field/SelectField";
import { TextField } from "@/app/_ui/field/TextField";
import { UndoBar } from "@/app/_ui/UndoBar";
import { type Done, useDone } from "@/app/(workspace)/_components/useDone";
import { holdThesePieces, releaseThesePieces } from "@/app/(workspace)/parts/[id]/actions";
import type { PartLot } from "@/lib/view/partDossier";
import { stockStateName } from "@/lib/view/partShelf";

interface QuarantineProps {
  /** Lots with pieces that the reader may change. */
  readonly lots: readonly PartLot[];
}

interface MoveProps extends QuarantineProps {
  readonly tell: (done: Done) => void;
}

type ErrorOf = (name: string) => string | undefined;

const RELEASED = [
  { value: "usable", label: "Usable" },
  { value: "unproven", label: "Unproven" },
  { value: "beyond_repair", label: "Beyond repair" },
] as const;

type Released = (typeof RELEASED)[number]["value"];

const choiceOf = ({ id, siteCode, bin, revision, quantity, state }: PartLot) => ({
  value: id,
  label: `${siteCode} ${bin}${revision === "" ? "" : ` ${revision}`}: ${quantity} ${stockStateName(state).toLowerCase()}`,
});

function seenOf({ state, quantity, lastPoweredOn }: PartLot) {
  return { state, quantity, lastPoweredOn };
}

function LotFields({ lots, errorOf }: QuarantineProps & { readonly errorOf: ErrorOf }) {
  return (
    <>
      <SelectField name="lotId" label="Lot" required choices={lots.map(choiceOf)} error={errorOf("lotId")} />
      <NumberField name="pieces" label="Pieces" required min={1} step={1} error={errorOf("pieces")} />
      <TextField name="reason" label="Why" required maxLength={200} error={errorOf("reason")} />
    </>
  );
}

function PutOnHold({ lots, tell }: MoveProps) {
  return (
    <Dialog trigger="Put pieces on hold" title="Put pieces on hold">
      {(close) => (
        <EntryForm
          submit="Put on hold"
          save={(text) => {
            const lot = lots.find(({ id }) => id === text("lotId")) ?? (lots[0] as PartLot);
            const asked = {
              lotId: lot.id,
              seen: seenOf(lot),
              pieces: text("pieces"),
              reason: text("reason"),
            };
            return orOffline(holdThesePieces(asked));
          }}
          onSaved={() => {
            close();
            tell({ message: "Put on hold under your name. Let them go the same way." });
          }}
        >
          {(errorOf) => <LotFields lots={lots} errorOf={errorOf} />}
        </EntryForm>
      )}
    </Dialog>
  );
}

function LetGo({ lots, tell }: MoveProps) {
  return (
    <Dialog trigger="Let pieces on hold go" title="Let pieces on hold go">
      {(close) => (
        <EntryForm
          submit="Let them go"
          save={(text) => {
            const lot = lots.find(({ id }) => id === text("lotId")) ?? (lots[0] as PartLot);
            const asked = {
              lotId: lot.id,
              seen: seenOf(lot),
              pieces: text("pieces"),
              reason: text("reason"),
            };
            return orOffline(releaseThesePieces({ ...asked, releaseAs: text("releaseAs") as Released }));
          }}
          onSaved={() => {
            close();
            tell({ message: "Let go under your name." });
          }}
        >
          {(errorOf) => (
            <>
              <LotFields lots={lots} errorOf={errorOf} />
              <SelectField
                name="releaseAs"
                label="They are"
                required
                choices={RELEASED}
                error={errorOf("releaseAs")}
              />
            </>
          )}
        </EntryForm>
      )}
    </Dialog>
  );
}

/** Puts pieces on hold and lets them go, each with a reason and the name of who did it. */
export function Quarantine({ lots }: QuarantineProps) {
  const { done, tell, close } = useDone();
  const held = lots.filter(({ state }) => state === "on_hold");
  const free = lots.filter(({ state }) => state !== "on_hold");
  return (
    <div className="no-print my-3 flex flex-wrap gap-2">
      {free.length === 0 ? null : <PutOnHold lots={free} tell={tell} />}
      {held.length === 0 ? null : <LetGo lots={held} tell={tell} />}
      <UndoBar message={done?.message ?? null} onClose={close} />
    </div>
  );
}
