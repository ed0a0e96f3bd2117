// What happened since to a paper that was issued: a later revision, or a sign-off revoked that it rests
// on. The paper stays as it was issued; the notice is linked to it by the entry that made it.

import type { PastEvent } from '../contract/events.js';
import { activeSurfaces } from '../job.js';
import { jobUpTo } from './moment.js';

export interface Notice {
  /** RFC 3339. */
  readonly at: string;
  /** Id of the entry that is the reason. */
  readonly entry: string;
  readonly words: string;
}

/** Since the entry that issued the paper; an entry that issues none has no notices. */
export function noticesSince(events: readonly PastEvent[], issued: PastEvent): readonly Notice[] {
  const at = events.findIndex(({ id }) => id === issued.id);
  const surfaces = surfacesOn(events, at);
  return events.slice(at + 1).flatMap((event): readonly Notice[] => {
    const words = wordsOf(events, issued, surfaces, event);
    return words === null ? [] : [{ at: event.recordedAt, entry: event.id, words }];
  });
}

function surfacesOn(events: readonly PastEvent[], at: number): readonly string[] {
  const issued = events[at];
  switch (issued?.type) {
    case 'order-issued/1':
      return issued.data.surfaces.map(({ surface }) => surface);
    case 'sign-off-requested/1':
    case 'warranty-issued/1':
      return issued.data.surfaces;
    case 'claim-decided/1':
      return activeSurfaces(jobUpTo(events, at)).map(({ id }) => id);
    default:
      return [];
  }
}

function wordsOf(
  events: readonly PastEvent[],
  issued: PastEvent,
  surfaces: readonly string[],
  event: PastEvent,
): string | null {
  if (
    event.type === 'order-issued/1' &&
    issued.type === 'order-issued/1' &&
    event.data.order === issued.data.order
  ) {
    return `Superseded by revision ${event.data.revision}`;
  }
  if (event.type !== 'sign-off-revoked/1') return null;
  const { request, reason } = event.data;
  const asked = events.find(
    (each) => each.type === 'sign-off-requested/1' && each.data.request === request,
  );
  if (asked?.type !== 'sign-off-requested/1') return null;
  const own = issued.type !== 'sign-off-requested/1' || issued.data.request === request;
  return own && asked.data.surfaces.some((id) => surfaces.includes(id))
    ? `The sign-off ${request} was revoked: ${reason}`
    : null;
}
