// Papers and lists: the facts of a job, already folded, become bytes that print, open in a
// spreadsheet, and are the same every time.

export { renderDecisionRecord, type DecisionRecordOptions } from './decision-record.js';
export {
  PdfRefused,
  renderPdf,
  typesetting,
  type Attachment,
  type Paper,
  type PaperSize,
  type PdfInput,
  type TemplateName,
} from './pdf.js';
