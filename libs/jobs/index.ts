// The story of a job: what was decided, on which facts, and what a change reopens. Knows no clock, no
// database and no web; time and person arrive in the command. Start with job.ts, then decide.ts.

export * from './contract.js';
export {
  initial,
  activeSurfaces,
  signOffRequired,
  signOffStands,
  surfaceStage,
  CONFIRMED_STAGES,
  type Job,
  type Surface,
  type SignOff,
} from './job.js';
export { decide, MAY, roleFor } from './decide.js';
export { DEFAULT_POLICY, type Context, type Decision, type Policy } from './decision.js';
export { evolve } from './evolve.js';
export { jobAsOf } from './as-of.js';
export { rehearse } from './rehearse.js';
export { takeOffSheet } from './take-off/view.js';
export { MOVES, type MoveId, type Refusal } from './refusal.js';
export { jobStage, jobView, stageWords } from './view.js';
export { jobRow } from './row.js';
export { surfacesOf, wordsFor } from './history.js';
export { scopeOf } from './sign-off/scope.js';
export { evaluate, ENGINE } from './choosing/evaluate.js';
export { BUDGET, explain, withExplanation, type Explanation } from './choosing/what-would.js';
export { choose, chooseSchema, ChooseInput } from './choosing/choose.js';
export type { Question } from './choosing/question.js';
export { evaluationFor, questionOf } from './stages/gauge.js';
export { fastenerNames, type Names } from './documents/moment.js';
export { decisionRecord, whyWords } from './documents/decision-record.js';
export { orderPaper, type OrderPaper } from './documents/order-paper.js';
export {
  engineerPacket,
  type EngineerPacket,
  type PacketSurface,
} from './documents/engineer-packet.js';
export {
  warrantyPaper,
  type WarrantyPaper,
  type WarrantyTerm,
} from './documents/warranty-paper.js';
export { decisionLetter, type DecisionLetter } from './documents/decision-letter.js';
export { DISCLOSURES } from './after-order/disclosures.js';
export { fallsDue, DUE_KINDS, type Due, type DueKind } from './after-order/due.js';
export { compareLoads } from './catalogue/load-comparison.js';
export { chartFaults, type ChartFault } from './catalogue/chart-checks.js';
export { PART_NAMES, PARTS, type Part, type Sheet, type SheetFault } from './catalogue/parts.js';
export { MOST_ROWS } from './catalogue/read-lines.js';
export {
  importCatalogue,
  importCharts,
  type CatalogueImport,
  type PartChange,
} from './catalogue/import.js';
export { catalogueDifference, type CatalogueDifference } from './catalogue/difference.js';
export { noticesSince, type Notice } from './documents/notices.js';
export {
  decidedBy,
  decidedIn,
  isStageEvent,
  type Decided,
  type Shelf,
  type StageEvent,
} from './rulebook/decided.js';
export { replay, type Replay } from './rulebook/replay.js';
export { underAnother, type UnderAnother } from './rulebook/under-another.js';
export {
  createPreview,
  preview,
  together,
  type Impact,
  type Preview,
  type Previewed,
  type Progress,
} from './rulebook/preview.js';
export { editionDifference } from './rulebook/difference.js';
export { draftOf } from './rulebook/draft.js';
export {
  decideRulebook,
  EMPTY_RULEBOOK,
  evolveRulebook,
  type Rulebook,
  type RulebookContext,
  type RulebookDecision,
  type StandingDraft,
} from './rulebook/rulebook.js';
