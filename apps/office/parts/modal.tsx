// The modal dialog itself: labelled, focus inside, Esc cancels, focus returns to its opener.

import { Dialog as AriaDialog, Heading, Modal, ModalOverlay } from 'react-aria-components';
import type { ReactNode } from 'react';

export interface DialogProps {
  readonly title: string;
  readonly open: boolean;
  readonly close: () => void;
  readonly children: ReactNode;
  readonly urgent?: boolean;
}

export default function AriaModal({ title, open, close, children, urgent }: DialogProps) {
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
