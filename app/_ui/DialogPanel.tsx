import type { ReactNode } from "react";
import { Button, Heading, Modal, ModalOverlay, Dialog as Panel } from "react-aria-components";

export interface DialogPanelProps {
  readonly title: string;
  readonly wide: boolean;
  readonly onClose: () => void;
  /** The content; call `close` when done. */
  readonly children: (close: () => void) => ReactNode;
}

/** A dialog over the page. */
export function DialogPanel({ title, wide, onClose, children }: DialogPanelProps) {
  return (
    <ModalOverlay
      className="backdrop"
      isDismissable
      isOpen
      onOpenChange={(open) => (open ? undefined : onClose())}
    >
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
  );
}
