"use client";

import type { ReactNode } from "react";
import { Button, DialogTrigger, Heading, Modal, ModalOverlay, Dialog as Panel } from "react-aria-components";
import type { ButtonKind } from "@/app/_ui/Button";

interface DialogProps {
  /** Text of the button that opens it. */
  readonly trigger: string;
  readonly kind?: ButtonKind;
  readonly title: string;
  readonly wide?: boolean;
  /** The content; call `close` when done. */
  readonly children: (close: () => void) => ReactNode;
}

/** A button and the dialog it opens. Used from client components, because its content is a function. */
export function Dialog({ trigger, kind = "plain", title, wide = false, children }: DialogProps) {
  return (
    <DialogTrigger>
      <Button className="button" data-kind={kind}>
        {trigger}
      </Button>
      <ModalOverlay className="backdrop" isDismissable>
        <Modal className={`w-full border border-ink-2 bg-sheet text-ink ${wide ? "max-w-3xl" : "max-w-xl"}`}>
          <Panel className="outline-none">
            {({ close }) => (
              <>
                <div className="flex items-start justify-between gap-4 border-rule border-b px-5 py-3">
                  <Heading slot="title" className="font-semibold text-xl">
                    {title}
                  </Heading>
                  <Button slot="close" className="button" data-kind="quiet">
                    Close
                  </Button>
                </div>
                <div className="px-5 py-4">{children(close)}</div>
              </>
            )}
          </Panel>
        </Modal>
      </ModalOverlay>
    </DialogTrigger>
  );
}
