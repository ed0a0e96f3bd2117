// Papers and lists: the facts of a job, already folded, become bytes that print, open in a
// spreadsheet, and are the same every time.

export { renderDecisionRecord, type DecisionRecordOptions } from './decision-record.js';
export { renderOrder } from './order-paper.js';
export { PRELIMINARY, renderEngineerPacket, type PacketOptions } from './engineer-packet.js';
export { renderWarranty } from './warranty-paper.js';
export { renderDecisionLetter } from './decision-letter.js';
export { DISCLOSURE_ITEMS, type Disclosed } from './disclosures.js';
export {
  PdfRefused,
  renderPdf,
  typesetting,
  type Attachment,
  type Paper,
  type PaperOptions,
  type PaperSize,
  type PdfInput,
  type TemplateName,
} from './pdf.js';
export type { Pair, PrintColumn, PrintDrawing, PrintTable, Section } from './print.js';
export { listFaults, type Cell, type ListColumn, type ListTable } from './list-table.js';
export { writeCsv } from './csv.js';
export { writeXlsx } from './xlsx.js';
export { orderList } from './order-list.js';
