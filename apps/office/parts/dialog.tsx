// One modal dialog. Its code comes once the first page stands, so that no list waits for it.

import { lazy, Suspense } from 'react';
import type { DialogProps } from './modal.js';

export const loadModal = () => import('./modal.js');
const Modal = lazy(loadModal);

/** Is there only while it is open. */
export const Dialog = (props: DialogProps) =>
  props.open && (
    <Suspense>
      <Modal {...props} />
    </Suspense>
  );
