// The decision record on paper: why each gauge was chosen, so that a stranger understands it.

import type { Drawing } from '#drawings';
import type { DecisionRecord } from '#jobs';
import { issuePaper, mustCaution, type PaperOptions } from './pdf.js';
import { printDrawing } from './print.js';
import { recordPage } from './record-page.js';

export interface DecisionRecordOptions extends PaperOptions {
  /** Drawings that need more than the record holds, by surface id. */
  readonly drawings?: Readonly<Record<string, readonly Drawing[]>>;
}

/** The same record and options give the same bytes. Throws PdfRefused. */
export async function renderDecisionRecord(
  record: DecisionRecord,
  options: DecisionRecordOptions,
): Promise<Uint8Array> {
  const { drawings = {}, ...rest } = options;
  const printed = Object.entries(drawings).map(
    ([id, each]) => [id, each.map((drawing) => printDrawing(drawing))] as const,
  );
  const about = {
    kind: 'Decision record',
    about: `Job ${record.job.number}, ${record.job.name}`,
    at: record.as_of.recorded,
    cautions: mustCaution('decision record', record.cautions),
  };
  return issuePaper(
    'decision-record',
    about,
    recordPage(record, Object.fromEntries(printed)),
    rest,
  );
}
