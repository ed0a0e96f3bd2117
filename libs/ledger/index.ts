// The ledger: keeps every log's events for ever, in one order, and proves that they are unaltered.

export { canonical } from './canonical.js';
export type { Json } from './canonical.js';
export { formatCheckpoint, openCheckpoint, parseCheckpoint, signCheckpoint } from './checkpoint.js';
export type { Checkpoint } from './checkpoint.js';
export { EMPTY_ROOT, Frontier, leafHash, nodeHash, treeRoot } from './merkle.js';
export type { Hash } from './merkle.js';
export { makeSigner, openNote, readVerifier, signNote, verifyEd25519 } from './note.js';
export type { NoteSigner, NoteVerifier } from './note.js';
export {
  consistencyRanges,
  inclusionIn,
  inclusionRanges,
  subtreeRanges,
  verifyConsistency,
  verifyInclusion,
} from './proof.js';
export type { Range } from './proof.js';
export { parseStrict } from './strict-json.js';
export { companyPool, newClient, openPool, openServicePool } from './postgres-pool.js';
export type { CompanyPool } from './postgres-pool.js';
export type { LedgerOptions } from './create-ledger.js';
export type { Randomness } from './envelope.js';
export { openKeyRing } from './key-ring.js';
export type { KeyRing } from './key-ring.js';
export type {
  AppendRequest,
  AppendResult,
  Appended,
  By,
  Fault,
  Head,
  Issued,
  KeptCheckpoint,
  KeptTimeStamp,
  Ledger,
  LogReport,
  NewEvent,
  ReadOptions,
  Recorded,
  StreamAppend,
} from './ledger.js';
export type {
  List,
  ListScope,
  ListState,
  Lists,
  Rebuilt,
  RebuildOptions,
} from './postgres-list.js';
export { createLists } from './postgres-lists.js';
export type { ListsOptions } from './postgres-lists.js';
export { CLOCK_TOLERANCE } from './clock-watch.js';
export type { ClockStep } from './clock-watch.js';
export { createMemoryLedger } from './memory-ledger.js';
export { createPostgresLedger } from './postgres-ledger.js';
export { createSignals } from './signals.js';
export type { Signals } from './signals.js';
export { startWakeUp } from './postgres-wake-up.js';
export type { WakeUp, WakeUpOptions } from './postgres-wake-up.js';
export { forgetOldCommands, serviceRoleFaults } from './postgres-upkeep.js';
export { KEY_CHANGED, KEY_STREAM } from './key-change.js';
export { createSigner } from './signer.js';
export type { SignedBefore } from './signed-before.js';
export type { Signer, SignerOptions, SignResult } from './signer.js';
export { formatProof, openProof } from './tlog-proof.js';
export { createTree } from './tree.js';
export type { Tree } from './tree.js';
export { verifyInWorkers } from './postgres-verify.js';
export type { VerifyOptions } from './postgres-verify.js';
export { verifyInWorker } from './postgres-verify-log.js';
export type { VerifyRun, VerifyTask } from './postgres-verify-log.js';
export { timeStampFault } from './verify-time-stamps.js';
export type { VerifyProgress } from './verify-log.js';
export { anchors, TimeStampFault } from './time-signature.js';
export { makeTimeRequest, openTimeStamp } from './time-stamp.js';
export type { Stamped, TimeStamp } from './time-stamp.js';
export { makeBundle } from './bundle.js';
export type { BundleRequest, BundleResult, BundleTools } from './bundle.js';
export { verifyBundle } from './verify-bundle.js';
export type { BundleReport, Held } from './verify-bundle.js';
