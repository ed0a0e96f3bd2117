// The decision record on paper: why each gauge was chosen, so that a stranger understands it.

import type { DecisionRecord } from '#jobs';
import type { Drawing } from '#drawings';
import { renderPdf, type Attachment, type PaperSize } from './pdf.js';
import { printDrawing } from './print.js';
import { recordPage } from './record-page.js';

export interface DecisionRecordOptions {
  readonly size: PaperSize;
  /** The canonical bytes of the record, attached as record.json. */
  readonly json: string;
  /** SHA-256 of those bytes, printed on every page. */
  readonly digest: string;
  /** Place in the log, once issued. */
  readonly position?: number;
  readonly attachments?: readonly Attachment[];
  /** What the paper is not, on every page: "played from a file, not a record". */
  readonly standing?: string;
  /** Drawings that need more than the record holds, by surface id. */
  readonly drawings?: Readonly<Record<string, readonly Drawing[]>>;
}

/** The same record and options give the same bytes. Throws PdfRefused. */
export async function renderDecisionRecord(
  record: DecisionRecord,
  options: DecisionRecordOptions,
): Promise<Uint8Array> {
  const { json, attachments = [], drawings = {}, ...rest } = options;
  const printed = Object.entries(drawings).map(
    ([id, each]) => [id, each.map((drawing) => printDrawing(drawing))] as const,
  );
  return renderPdf('decision-record', {
    paper: {
      ...rest,
      kind: 'Decision record',
      about: `Job ${record.job.number}, ${record.job.name}`,
      at: record.as_of.recorded,
      cautions: record.cautions,
    },
    body: recordPage(record, Object.fromEntries(printed)),
    json,
    attachments,
  });
}
