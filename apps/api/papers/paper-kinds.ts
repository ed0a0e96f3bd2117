// The kinds of paper: which entry of a job issues one, how it is folded, and how it is printed. "About"
// names one of its kind in a job: an order with its revision "o1.2", a request, a document, a claim, or
// the version of the job that a decision record speaks of.

import {
  decisionLetter,
  decisionRecord,
  engineerPacket,
  orderPaper,
  warrantyPaper,
  type DecisionLetter,
  type DecisionRecord,
  type EngineerPacket,
  type JobEvent,
  type Names,
  type OrderPaper,
  type PastEvent,
  type WarrantyPaper,
} from '#jobs';
import type { PaperOptions, TemplateName } from '#documents';
import { digestOf } from '../data/ledgers.js';

export const PAPER_KINDS = [
  'order',
  'engineer-packet',
  'warranty',
  'decision-letter',
  'decision-record',
] as const;
export type PaperKind = (typeof PAPER_KINDS)[number];

export interface PaperName {
  readonly paper: PaperKind;
  readonly about: string;
}

export type Content = OrderPaper | EngineerPacket | WarrantyPaper | DecisionLetter | DecisionRecord;

/** The paper that this entry issues, if it issues one. */
export function issuedBy(event: JobEvent | PastEvent): PaperName | undefined {
  switch (event.type) {
    case 'order-issued/1':
      return { paper: 'order', about: `${event.data.order}.${event.data.revision}` };
    case 'sign-off-requested/1':
      return { paper: 'engineer-packet', about: event.data.request };
    case 'warranty-issued/1':
      return { paper: 'warranty', about: event.data.document };
    case 'claim-decided/1':
      return { paper: 'decision-letter', about: event.data.claim };
    default:
      return undefined;
  }
}

/** undefined where the job has no such paper. */
export function foldPaper(
  job: string,
  events: readonly PastEvent[],
  { paper, about }: PaperName,
  names: Names,
): Content | undefined {
  switch (paper) {
    case 'order': {
      const [order = '', revision = ''] = about.split('.');
      return orderPaper(events, order, Number(revision), names);
    }
    case 'engineer-packet':
      return engineerPacket(events, about, { names, digestOf });
    case 'warranty':
      return warrantyPaper(events, about, names);
    case 'decision-letter':
      return decisionLetter(events, about, names);
    case 'decision-record': {
      const version = Number(about);
      if (!/^[1-9]\d{0,8}$/.test(about) || version > events.length) return undefined;
      return decisionRecord(job, events.slice(0, version), names);
    }
  }
}

export const templateOf = (paper: PaperKind): TemplateName => paper;

/** Read in when a paper is printed: the typesetter would make every start slower. */
export async function printPaper(content: Content, options: PaperOptions): Promise<Uint8Array> {
  const documents = await import('#documents');
  switch (content.document) {
    case 'order':
      return documents.renderOrder(content, options);
    case 'engineer-packet':
      return documents.renderEngineerPacket(content, options);
    case 'warranty':
      return documents.renderWarranty(content, options);
    case 'decision-letter':
      return documents.renderDecisionLetter(content, options);
    case 'decision-record':
      return documents.renderDecisionRecord(content, options);
  }
}
