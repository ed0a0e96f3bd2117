// One line for each event after the gauge.

import { label } from '#rules';
import type { AfterOrderEvents } from '../contract/after-order-events.js';
import type { PastEvent } from '../contract/events.js';

type AfterEvent = Extract<PastEvent, { readonly type: keyof AfterOrderEvents }>;

export function wordsAfterOrder(event: AfterEvent): string {
  switch (event.type) {
    case 'order-issued/1':
      return `Order ${event.data.order}, revision ${event.data.revision}, issued to ${event.data.supplier}`;
    case 'change-order-opened/1':
      return `Change order opened: ${event.data.reason}`;
    case 'change-order-withdrawn/1':
      return `Change order withdrawn: ${event.data.reason}`;
    case 'acknowledgment-recorded/1':
      return `Acknowledgment recorded: ${counted(event.data.differences.length, 'difference')}`;
    case 'receipt-recorded/1':
      return `Delivery received on ${event.data.on}: ${counted(event.data.differences.length, 'line')} not complete`;
    case 'mixed-lots-accepted/1':
      return `Mixed lots accepted: ${event.data.words}`;
    case 'receipt-settled/1':
      return `Line ${event.data.line} settled: ${event.data.words}`;
    case 'as-built-recorded/1':
      return `As built recorded: ${event.data.differences.join('; ') || 'as approved'}`;
    case 'inspection-recorded/1':
      return `Inspection on ${event.data.on}: ${event.data.passed ? 'passed' : 'not passed'}, ${counted(event.data.punch.length, 'punch item')}`;
    case 'punch-item-closed/1':
      return `Punch item ${event.data.item} closed: ${event.data.words}`;
    case 'completion-recorded/1':
      return `Completed on ${event.data.on}`;
    case 'registration-filed/1':
      return `Registered (${event.data.kind}) on ${event.data.on}${event.data.late_days > 0 ? `, filed ${event.data.late_days} days late` : ''}`;
    case 'warranty-issued/1':
      return `Warranty document issued: ${event.data.kind}, ${event.data.title}, by ${event.data.warrantor}`;
    case 'warranty-transferred/1':
      return `Warranty transferred on ${event.data.on}${event.data.notice_given ? '' : ', without notice'}`;
    case 'claim-opened/1':
      return `Claim opened (${label(event.data.kind)}): ${event.data.words}`;
    case 'reading-recorded/1':
      return `Reading recorded: ${label(event.data.what)}`;
    case 'claim-decided/1':
      return `Claim ${label(event.data.decision)}: ${event.data.reason}`;
  }
}

const counted = (n: number, what: string): string =>
  `${n === 0 ? 'no' : n} ${what}${n === 1 ? '' : 's'}`;
