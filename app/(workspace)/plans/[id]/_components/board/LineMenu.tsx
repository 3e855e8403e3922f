"use client";

import { type ReactNode, useState, useTransition } from "react";
import { Heading, Modal, ModalOverlay, Dialog as Panel, Button as Push } from "react-aria-components";
import { Button } from "@/app/_ui/Button";
import { FormMessage } from "@/app/_ui/FormMessage";
import type { BoardEdit } from "@/app/(workspace)/plans/[id]/_components/board/boardEdit";
import { placeWords, slotCautions, wayWords } from "@/lib/view/boardWords";
import type { BoardLine, BoardWay } from "@/lib/view/planBoard";

interface MenuFrameProps {
  readonly title: string;
  readonly open: boolean;
  readonly onOpen: (open: boolean) => void;
  readonly children: ReactNode;
}

function MenuFrame({ title, open, onOpen, children }: MenuFrameProps) {
  return (
    <ModalOverlay className="backdrop" isDismissable isOpen={open} onOpenChange={onOpen}>
      <Modal className="w-full max-w-3xl border border-ink-2 bg-sheet text-ink">
        <Panel className="outline-none">
          <div className="flex items-start justify-between gap-4 border-rule border-b px-5 py-3">
            <Heading slot="title" className="font-semibold text-xl">
              {title}
            </Heading>
            <Push slot="close" className="button" data-kind="quiet">
              Close
            </Push>
          </div>
          <div className="px-5 py-4">{children}</div>
        </Panel>
      </Modal>
    </ModalOverlay>
  );
}

interface LineMenuProps {
  readonly line: BoardLine;
  readonly edit: BoardEdit;
}

/** All ways of a line with all their places, and the decision for or against it. */
export function LineMenu({ line, edit }: LineMenuProps) {
  const [open, setOpen] = useState(false);
  const close = () => setOpen(false);
  return (
    <>
      <Button kind="quiet" aria-label={`Plan ${line.code}`} onClick={() => setOpen(true)}>
        Plan…
      </Button>
      <MenuFrame title={`${line.code} ${line.name}`} open={open} onOpen={setOpen}>
        <div className="grid gap-6">
          {line.ways.map((way) => (
            <Places key={way.id} {...{ line, way, edit, close }} />
          ))}
          <PinForm {...{ line, edit, close }} />
        </div>
      </MenuFrame>
    </>
  );
}

interface WayMenuProps extends LineMenuProps {
  readonly way: BoardWay;
  readonly open: boolean;
  readonly onOpen: (open: boolean) => void;
}

/** All places of a way that is placed. */
export function WayMenu({ line, way, edit, open, onOpen }: WayMenuProps) {
  const close = () => onOpen(false);
  return (
    <MenuFrame title={`${line.code}: ${way.name}`} open={open} onOpen={onOpen}>
      <div className="grid gap-6">
        <Places {...{ line, way, edit, close }} />
        <div>
          <Button
            onClick={async () => {
              if (await edit.place(line, way.id, null)) close();
            }}
          >
            Take it out
          </Button>
        </div>
      </div>
    </MenuFrame>
  );
}

interface PlacesProps extends LineMenuProps {
  readonly way: BoardWay;
  readonly close: () => void;
}

function Places({ line, way, edit, close }: PlacesProps) {
  const [pending, start] = useTransition();
  const placed = line.placed.find(({ optionId }) => optionId === way.id);
  return (
    <section aria-label={way.name}>
      <h3 className="font-semibold">{way.name}</h3>
      <p className="measure mb-2 text-ink-2 text-sm">{wayWords(way)}</p>
      {way.slots.length === 0 ? <p className="text-sm">No window with known hours is open to it.</p> : null}
      <ul className="flex flex-wrap gap-1.5">
        {way.slots.map((slot) => {
          const cautions = slotCautions(slot);
          const here = placed?.slotId === slot.id;
          return (
            <li key={slot.id}>
              <Button
                aria-pressed={here}
                aria-disabled={pending}
                className={here ? "border-ink font-bold" : ""}
                title={[placeWords(slot), ...cautions].join(": ")}
                onClick={() =>
                  start(async () => {
                    if (await edit.place(line, way.id, slot)) close();
                  })
                }
              >
                {slot.name}
                {cautions.length > 0 ? (
                  <span className="font-normal text-sm text-worse">
                    <span aria-hidden="true">▲</span> {cautions.join(", ")}
                  </span>
                ) : null}
              </Button>
            </li>
          );
        })}
      </ul>
    </section>
  );
}

function PinForm({ line, edit, close }: LineMenuProps & { readonly close: () => void }) {
  const [reason, setReason] = useState(line.pinReason ?? "");
  const [refused, setRefused] = useState<string | null>(null);
  const [, start] = useTransition();
  const pin = (to: "in" | "out" | "none") =>
    start(async () => {
      const answer = await edit.pin(line, to, reason);
      setRefused(answer);
      if (answer === null) close();
    });
  return (
    <section aria-label="Decision" className="border-rule border-t pt-3">
      <h3 className="font-semibold">Decide by hand</h3>
      <p className="measure mb-2 text-ink-2 text-sm">
        A line pinned in stays where it is whatever is solved or filled; one pinned out is never planned. What
        each decision costs is shown with a solved plan.
      </p>
      <label className="block">
        <span className="label">Why</span>
        <input
          className="input"
          maxLength={300}
          value={reason}
          onChange={(event) => setReason(event.target.value)}
        />
      </label>
      <FormMessage kind="problem">{refused}</FormMessage>
      <div className="mt-2 flex flex-wrap gap-2">
        <Button onClick={() => pin("in")}>Pin in</Button>
        <Button onClick={() => pin("out")}>Pin out</Button>
        {line.pin === "none" ? null : <Button onClick={() => pin("none")}>Free it</Button>}
      </div>
    </section>
  );
}
