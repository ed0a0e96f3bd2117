// Commands after the gauge, each with its decider.

import type { Command } from '../contract/commands.js';
import type { AFTER_ORDER_COMMANDS } from '../contract/after-order.js';
import type { Context, Decision } from '../decision.js';
import type { Job } from '../job.js';
import { decideClaim, openClaim, recordReading } from './claims.js';
import {
  acceptMixedLots,
  closePunchItem,
  recordAsBuilt,
  recordCompletion,
  recordInspection,
} from './installation.js';
import {
  issueOrder,
  openChangeOrder,
  recordAcknowledgment,
  recordReceipt,
  settleReceipt,
  withdrawChangeOrder,
} from './order.js';
import { fileRegistration, issueWarranty, transferWarranty } from './warranty.js';

type AfterCommand = Extract<Command, { readonly type: keyof typeof AFTER_ORDER_COMMANDS }>;

export function decideAfterOrder(job: Job, command: AfterCommand, context: Context): Decision {
  switch (command.type) {
    case 'issue-order':
      return issueOrder(job, command, context);
    case 'open-change-order':
      return openChangeOrder(job, command);
    case 'withdraw-change-order':
      return withdrawChangeOrder(job, command);
    case 'record-acknowledgment':
      return recordAcknowledgment(job, command);
    case 'record-receipt':
      return recordReceipt(job, command);
    case 'accept-mixed-lots':
      return acceptMixedLots(job, command);
    case 'settle-receipt':
      return settleReceipt(job, command);
    case 'record-as-built':
      return recordAsBuilt(job, command);
    case 'record-inspection':
      return recordInspection(job, command);
    case 'close-punch-item':
      return closePunchItem(job, command);
    case 'record-completion':
      return recordCompletion(job, command, context);
    case 'file-registration':
      return fileRegistration(job, command);
    case 'issue-warranty':
      return issueWarranty(job, command, context);
    case 'transfer-warranty':
      return transferWarranty(job, command);
    case 'open-claim':
      return openClaim(job, command);
    case 'record-reading':
      return recordReading(job, command);
    case 'decide-claim':
      return decideClaim(job, command, context);
  }
}
