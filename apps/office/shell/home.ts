// Where each person's day starts, and what a role opens.

import type { Role } from '#jobs/contract';
import type { Session } from '../api/answers.js';

export const OFFICE: readonly Role[] = ['office', 'project-manager'];

export const has = (given: Session | undefined, ...roles: readonly Role[]): boolean =>
  given?.roles.some((role) => roles.includes(role)) ?? false;

export function homeOf(session: Session | undefined) {
  if (has(session, ...OFFICE)) return '/jobs';
  if (has(session, 'engineer')) return '/sign-offs';
  if (has(session, 'crew-lead')) return '/phone';
  if (has(session, 'warranty-reviewer')) return '/decisions';
  if (has(session, 'standards-manager')) return '/rules';
  if (has(session, 'administrator')) return '/admin';
  return '/jobs';
}
