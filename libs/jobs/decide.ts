// A command against a job: events, or every refusal at once. Never throws for a business "no". The
// only caller of rules; the edition used is named in the event.

import type { Role } from '#rules';
import type { Command, CommandType } from './contract/commands.js';
import { decline, type Context, type Decision } from './decision.js';
import { decideAfterOrder } from './after-order/decide-after.js';
import { orderedAndClosed } from './after-order/state.js';
import {
  addBuilding,
  addSurface,
  describeJob,
  openJob,
  withdrawSurface,
  addNote,
} from './opening.js';
import { recordFacts } from './recording.js';
import type { Job } from './job.js';
import { refuse } from './refusal.js';
import { answerSignOff, reaffirmSignOff, revokeSignOff } from './sign-off/answer.js';
import { recordDesign, requestSignOff } from './sign-off/ask.js';
import { recordTakeOff } from './take-off/record.js';
import { confirmSubstrate, recordTearOff } from './stages/substrate.js';
import { chooseCoating } from './stages/coating.js';
import { chooseStyle } from './stages/style.js';
import { assessHazards } from './stages/hazards.js';
import { reopenStage } from './stages/confirm.js';
import { selectGauge } from './stages/gauge.js';

const OFFICE = ['office', 'project-manager'] as const satisfies readonly Role[];

/** Which roles may give which command; the first of a person's roles that fits is recorded. */
export const MAY = {
  'open-job': OFFICE,
  'describe-job': OFFICE,
  'add-building': OFFICE,
  'add-surface': OFFICE,
  'withdraw-surface': OFFICE,
  'record-facts': [...OFFICE, 'crew-lead'],
  'choose-style': OFFICE,
  'choose-coating': OFFICE,
  'assess-hazards': OFFICE,
  'confirm-substrate': OFFICE,
  'select-gauge': OFFICE,
  'reopen-stage': OFFICE,
  'record-tear-off': [...OFFICE, 'crew-lead'],
  'request-sign-off': ['project-manager'],
  'answer-sign-off': ['engineer'],
  'record-engineer-design': OFFICE,
  'reaffirm-sign-off': ['engineer'],
  'revoke-sign-off': ['engineer'],
  'add-note': [...OFFICE, 'crew-lead', 'engineer', 'warranty-reviewer'],
  'record-take-off': OFFICE,
  'issue-order': OFFICE,
  'open-change-order': ['project-manager'],
  'withdraw-change-order': ['project-manager'],
  'record-acknowledgment': OFFICE,
  'record-receipt': [...OFFICE, 'crew-lead'],
  'accept-mixed-lots': OFFICE,
  'settle-receipt': OFFICE,
  'record-as-built': [...OFFICE, 'crew-lead'],
  'record-inspection': OFFICE,
  'close-punch-item': [...OFFICE, 'crew-lead'],
  'record-completion': OFFICE,
  'file-registration': OFFICE,
  'issue-warranty': OFFICE,
  'transfer-warranty': [...OFFICE, 'warranty-reviewer'],
  'open-claim': [...OFFICE, 'warranty-reviewer'],
  'record-reading': ['warranty-reviewer'],
  'decide-claim': ['warranty-reviewer'],
} as const satisfies Record<CommandType, readonly Role[]>;

/** The role a person acts in, or undefined where none of theirs may. */
export function roleFor(type: CommandType, roles: readonly Role[]): Role | undefined {
  return (MAY[type] as readonly Role[]).find((role) => roles.includes(role));
}

/** Commands that change what was ordered. */
const CHANGES_STAGES: readonly CommandType[] = [
  'add-surface',
  'withdraw-surface',
  'choose-style',
  'choose-coating',
  'assess-hazards',
  'confirm-substrate',
  'select-gauge',
  'reopen-stage',
];

export function decide(job: Job, command: Command, context: Context): Decision {
  if (!roleFor(command.type, context.by.roles)) {
    const may = MAY[command.type].join(', ');
    return decline(
      refuse(
        'MOVE-04',
        `${command.type} is for ${may}; you are ${context.by.roles.join(', ') || 'without a role'}.`,
      ),
    );
  }
  if (command.type === 'open-job') return openJob(job, command);
  if (job.version === 0) return decline(refuse('MOVE-03', 'There is no such job.'));
  if (CHANGES_STAGES.includes(command.type) && orderedAndClosed(job.after)) {
    return decline(refuse('MOVE-19', 'The order is out: open a change order first.'));
  }
  switch (command.type) {
    case 'describe-job':
      return describeJob(job, command);
    case 'add-building':
      return addBuilding(job, command);
    case 'add-surface':
      return addSurface(job, command);
    case 'withdraw-surface':
      return withdrawSurface(job, command);
    case 'record-facts':
      return recordFacts(job, command);
    case 'choose-style':
      return chooseStyle(job, command, context);
    case 'choose-coating':
      return chooseCoating(job, command, context);
    case 'assess-hazards':
      return assessHazards(job, command, context);
    case 'confirm-substrate':
      return confirmSubstrate(job, command, context);
    case 'select-gauge':
      return selectGauge(job, command, context);
    case 'reopen-stage':
      return reopenStage(job, command);
    case 'record-tear-off':
      return recordTearOff(job, command);
    case 'request-sign-off':
      return requestSignOff(job, command, context);
    case 'answer-sign-off':
      return answerSignOff(job, command, context);
    case 'record-engineer-design':
      return recordDesign(job, command, context);
    case 'reaffirm-sign-off':
      return reaffirmSignOff(job, command, context);
    case 'revoke-sign-off':
      return revokeSignOff(job, command, context);
    case 'record-take-off':
      return recordTakeOff(job, command, context);
    case 'add-note':
      return addNote(job, command);
    default:
      return decideAfterOrder(job, command, context);
  }
}
