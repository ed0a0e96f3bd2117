// One modal dialog: labelled, focus inside, Esc cancels, focus returns to its opener.

import type { ReactNode } from 'react';
import { Dialog as AriaDialog, Heading, Modal, ModalOverlay } from 'react-aria-components';

export function Dialog({
  title,
  open,
  close,
  children,
  urgent,
}: {
  readonly title: string;
  readonly open: boolean;
  readonly close: () => void;
  readonly children: ReactNode;
  readonly urgent?: boolean;
}) {
  return (
    <ModalOverlay
      className="shade"
      isOpen={open}
      onOpenChange={(now) => !now && close()}
      isDismissable={!urgent}
    >
      <Modal className="dialog">
        <AriaDialog role={urgent ? 'alertdialog' : 'dialog'}>
          <Heading slot="title" level={2}>
            {title}
          </Heading>
          {children}
        </AriaDialog>
      </Modal>
    </ModalOverlay>
  );
}
