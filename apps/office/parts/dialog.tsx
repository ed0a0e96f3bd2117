// One modal dialog. Its code comes once the first page stands, so that no list waits for it.

import { lazy, Suspense, type ReactNode } from 'react';

export interface DialogProps {
  readonly title: string;
  readonly open: boolean;
  readonly close: () => void;
  readonly children: ReactNode;
  readonly urgent?: boolean;
}

export const loadModal = () => import('./modal.js');
const Modal = lazy(loadModal);

/** Is there only while it is open. */
export const Dialog = (props: DialogProps) =>
  props.open && (
    <Suspense>
      <Modal {...props} />
    </Suspense>
  );
