// Every small form after the gauge by the name of its command, in the order a job meets them.

import type { AfterForm } from './asks.js';
import {
  closePunchItem,
  recordAsBuilt,
  recordCompletion,
  recordInspection,
} from './built-forms.js';
import { decideClaim, openClaim, recordReading } from './claim-forms.js';
import {
  acceptMixedLots,
  openChangeOrder,
  recordAcknowledgment,
  recordReceipt,
  settleReceipt,
  withdrawChangeOrder,
} from './order-forms.js';
import { fileRegistration, issueWarranty, transferWarranty } from './warranty-forms.js';

export const AFTER_FORMS: Readonly<Record<string, AfterForm>> = {
  'open-change-order': openChangeOrder,
  'withdraw-change-order': withdrawChangeOrder,
  'record-acknowledgment': recordAcknowledgment,
  'record-receipt': recordReceipt,
  'settle-receipt': settleReceipt,
  'accept-mixed-lots': acceptMixedLots,
  'record-as-built': recordAsBuilt,
  'record-inspection': recordInspection,
  'close-punch-item': closePunchItem,
  'record-completion': recordCompletion,
  'file-registration': fileRegistration,
  'issue-warranty': issueWarranty,
  'transfer-warranty': transferWarranty,
  'open-claim': openClaim,
  'record-reading': recordReading,
  'decide-claim': decideClaim,
};
