"use client";

import { Button } from "@/app/_ui/Button";
import { Dialog } from "@/app/_ui/Dialog";
import { UndoBar } from "@/app/_ui/UndoBar";
import { type Done, useDone } from "@/app/(workspace)/_components/useDone";
import { PanelForm } from "@/app/(workspace)/machines/[id]/_components/PanelForm";
import { PlacesForm } from "@/app/(workspace)/machines/[id]/_components/PlacesForm";
import {
  changeCabinet,
  dropPanel,
  newPanel,
  placePanels,
  putPanelBack,
} from "@/app/(workspace)/machines/[id]/actions";
import type { MachinePanel, MachinePosition } from "@/lib/view/machine";
import { count } from "@/lib/view/number";

interface PanelsProps {
  readonly machineId: string;
  readonly panels: readonly MachinePanel[];
  readonly places: readonly MachinePosition[];
  readonly mayEdit: boolean;
}

/** The cabinets of a machine, how to find each, what stands in it, and what can be changed about them. */
export function Panels({ machineId, panels, places, mayEdit }: PanelsProps) {
  const { done, tell, undo, close } = useDone();
  const placesIn = (id: string | null) => places.filter(({ panel }) => (panel?.id ?? null) === id).length;
  return (
    <>
      {panels.length === 0 ? <p className="py-1">No panel is recorded for this machine.</p> : null}
      <ul className="mb-3">
        {panels.map((panel) => (
          <li
            key={panel.id}
            id={`panel-${panel.designation}`}
            className="flex flex-wrap items-baseline justify-between gap-x-6 border-rule border-b py-1 target:bg-accent-soft"
          >
            <span>
              <strong>{panel.designation}</strong> {panel.name}
              <span className="block text-ink-2 text-sm">
                {panel.location ?? "how to find it is not recorded"}; {count(placesIn(panel.id), "place")} in
                it
              </span>
            </span>
            {mayEdit ? <PanelActions panel={panel} tell={tell} /> : null}
          </li>
        ))}
      </ul>
      {panels.length > 0 && placesIn(null) > 0 ? (
        <p className="mb-3 text-ink-2">{count(placesIn(null), "place")} in no panel known.</p>
      ) : null}
      {mayEdit ? (
        <div className="flex flex-wrap gap-2">
          <AddPanel machineId={machineId} tell={tell} />
          {panels.length === 0 || places.length === 0 ? null : (
            <SortPlaces {...{ machineId, panels, places, tell }} />
          )}
        </div>
      ) : null}
      <UndoBar message={done?.message ?? null} {...(done?.undo ? { onUndo: undo } : {})} onClose={close} />
    </>
  );
}

interface Telling {
  readonly tell: (done: Done) => void;
}

function AddPanel({ machineId, tell }: Telling & { readonly machineId: string }) {
  return (
    <Dialog trigger="Add a panel" title="Add a panel">
      {(close) => (
        <PanelForm
          save={(words) => newPanel({ machineId, ...words })}
          onSaved={({ id, words }) => {
            close();
            tell({ message: `Panel ${words.designation} is recorded.`, undo: () => dropPanel({ id }) });
          }}
        />
      )}
    </Dialog>
  );
}

function PanelActions({ panel, tell }: Telling & { readonly panel: MachinePanel }) {
  const { id, designation, name, location } = panel;
  const seen = { designation, name, location };
  const remove = async () => {
    const answer = await dropPanel({ id });
    if (answer.ok) tell({ message: `Removed: ${designation}.`, undo: () => putPanelBack({ id }) });
    else tell({ message: answer.error.reason });
  };
  return (
    <span className="flex gap-2">
      <Dialog trigger={`Change ${designation}`} kind="quiet" title={`Panel ${designation}`}>
        {(close) => (
          <PanelForm
            start={seen}
            save={(wanted) => changeCabinet({ panelId: id, seen, wanted })}
            onSaved={({ words }) => {
              close();
              tell({
                message: `Panel ${words.designation} is changed.`,
                undo: () => changeCabinet({ panelId: id, seen: words, wanted: seen }),
              });
            }}
          />
        )}
      </Dialog>
      <Button kind="quiet" aria-label={`Remove ${designation}`} onClick={remove}>
        Remove
      </Button>
    </span>
  );
}

function SortPlaces({ machineId, panels, places, tell }: Telling & Omit<PanelsProps, "mayEdit">) {
  const seen = places.map(({ id, panel }) => ({ positionId: id, panelId: panel?.id ?? null }));
  return (
    <Dialog trigger="Say what stands where" title="Which place stands in which panel" wide>
      {(close) => (
        <PlacesForm
          {...{ machineId, panels, places, seen }}
          onSaved={(wanted) => {
            close();
            tell({
              message: "The places are sorted into their panels.",
              undo: () => placePanels({ machineId, seen: [...wanted], wanted: seen }),
            });
          }}
        />
      )}
    </Dialog>
  );
}
