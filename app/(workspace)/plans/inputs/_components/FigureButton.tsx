"use client";

import { Button, DialogTrigger, Heading, Modal, ModalOverlay, Dialog as Panel } from "react-aria-components";
import type { Done } from "@/app/(workspace)/_components/useDone";
import { FigureForm } from "@/app/(workspace)/plans/inputs/_components/FigureForm";
import { stateThisFigure, withdrawThisFigure } from "@/app/(workspace)/plans/inputs/actions";
import type { FigureCell } from "@/lib/view/figureGrids";
import { figureWords, typedFigure } from "@/lib/view/planInputs";
import { day } from "@/lib/view/time";

interface FigureButtonProps {
  readonly cell: FigureCell;
  readonly currencies: readonly string[];
  readonly tell: (done: Done) => void;
}

/** A figure with who answers for it; pressed, the form that states it anew. */
export function FigureButton({ cell, currencies, tell }: FigureButtonProps) {
  const { figure, name, writes } = cell;
  if (!writes) return <Shown cell={cell} />;
  return (
    <DialogTrigger>
      <Button
        className="-my-0.5 inline-flex cursor-pointer justify-end rounded-[3px] border border-transparent px-1.5 py-0.5 text-end hover:border-rule-2 max-sm:min-h-11"
        aria-label={`${name}: ${figure ? figureWords(figure) : cell.missing}. Change`}
      >
        <Shown cell={cell} />
      </Button>
      <ModalOverlay className="backdrop" isDismissable>
        <Modal className="w-full max-w-xl border border-ink-2 bg-sheet text-ink">
          <Panel className="outline-none">
            {({ close }) => (
              <>
                <div className="border-rule border-b px-5 py-3">
                  <Heading slot="title" className="font-semibold text-xl">
                    {name}
                  </Heading>
                </div>
                <div className="px-5 py-4">
                  <FigureForm
                    {...{ cell, currencies, close }}
                    onSaved={(mark) => {
                      close();
                      tell({ message: `Stated: ${name}.`, undo: () => restore(cell, mark) });
                    }}
                    onWithdrawn={() => {
                      close();
                      tell({ message: `Withdrawn: ${name}.`, undo: () => restore(cell, null) });
                    }}
                  />
                </div>
              </>
            )}
          </Panel>
        </Modal>
      </ModalOverlay>
    </DialogTrigger>
  );
}

/** Puts back what stood there before. */
function restore(cell: FigureCell, mark: { readonly figureId: string; readonly version: number } | null) {
  const { figure, key } = cell;
  if (figure === null && mark) return withdrawThisFigure(mark);
  if (figure === null) throw new RangeError("nothing stood here before, and nothing was stated");
  const { source, owner, evidence, currency } = figure;
  return stateThisFigure({
    ...{ ...key, value: typedFigure(figure), source, owner, evidence, currency },
    version: mark?.version ?? null,
  });
}

function Shown({ cell: { figure, missing } }: { readonly cell: FigureCell }) {
  if (figure === null) return <span className="text-ink-2 italic">{missing}</span>;
  return (
    <span title={figure.source}>
      <span className={figure.evidence === "assumed" ? "assumed" : ""}>{figureWords(figure)}</span>
      <span className="block font-normal text-ink-2 text-sm">
        {figure.owner}, {day(figure.statedOn)}
      </span>
    </span>
  );
}
