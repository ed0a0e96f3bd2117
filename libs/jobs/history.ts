// One line for each event, and which surfaces it touches.

import { label } from '#rules';
import type { PastEvent } from './contract/events.js';
import { isAfterOrder } from './after-order/state.js';
import { wordsAfterOrder } from './after-order/words.js';
import { factDefinition, type FactName } from './contract/fact-dictionary.js';

/** Surfaces an event touches; "all" where it may touch any. */
export function surfacesOf(event: PastEvent): readonly string[] | 'all' {
  switch (event.type) {
    case 'job-opened/1':
    case 'job-described/1':
      return 'all';
    case 'building-added/1':
      return [];
    case 'facts-recorded/1': {
      const touched = event.data.facts.map(({ path }) => path.split('/'));
      return touched.every(([kind]) => kind === 'surface')
        ? [...new Set(touched.map(([, id]) => id ?? ''))]
        : 'all';
    }
    case 'sign-off-requested/1':
    case 'engineer-design-received/1':
      return event.data.surfaces;
    case 'sign-off-approved/1':
    case 'sign-off-declined/1':
    case 'sign-off-reaffirmed/1':
    case 'sign-off-revoked/1':
      return 'all';
    case 'note-added/1':
      return [];
    default:
      return isAfterOrder(event) ? 'all' : [event.data.surface];
  }
}

export function wordsFor(event: PastEvent): string {
  switch (event.type) {
    case 'job-opened/1':
      return `Job ${event.data.number} opened: ${event.data.name}`;
    case 'job-described/1':
      return `Job described: ${Object.keys(event.data)
        .filter((key) => key !== 'reason')
        .join(', ')}`;
    case 'building-added/1':
      return `Building added: ${event.data.name}`;
    case 'surface-added/1':
      return `Surface added: ${event.data.name} (${event.data.kind})`;
    case 'surface-withdrawn/1':
      return `Surface withdrawn: ${event.data.reason}`;
    case 'facts-recorded/1': {
      const names = event.data.facts.map(
        ({ path }) => factDefinition(path.split('/').at(-1) as FactName).asks,
      );
      return `${event.data.corrects ? 'Corrected' : 'Recorded'}: ${names.slice(0, 3).join('; ')}${names.length > 3 ? ` and ${names.length - 3} more` : ''}`;
    }
    case 'style-chosen/1':
      return `Style chosen: ${event.data.content.profile_name}, ${event.data.content.width} in`;
    case 'coating-chosen/1': {
      const { metal, metallic_coating, paint_system, color_group } = event.data.content;
      return `Coating chosen: ${metal} ${metallic_coating}, ${label(paint_system)}, ${label(color_group)}`;
    }
    case 'hazards-assessed/1':
      return `Hazards assessed: wind ${event.data.content.wind.method}, snow ${event.data.content.snow.method}`;
    case 'substrate-confirmed/1':
      return `Substrate confirmed${event.data.content.provisional ? ' provisionally' : ''}: ${label(event.data.content.substrate)}`;
    case 'gauge-selected/1': {
      const { gauge, thickness_in } = event.data.content;
      return `Gauge selected: ${gauge === null ? '' : `${gauge} gauge, `}${thickness_in} in`;
    }
    case 'stage-reopened/1':
      return `${label(event.data.stage)} reopened: ${event.data.reason}`;
    case 'tear-off-recorded/1':
      return `Tear-off: ${label(event.data.finding)}; ${event.data.words}`;
    case 'sign-off-requested/1':
      return `Sign-off asked: ${event.data.scope_words}`;
    case 'sign-off-approved/1':
      return `Engineer approved${event.data.conditions ? ' with conditions' : ''}: ${event.data.license.name}, license ${event.data.license.number}`;
    case 'sign-off-declined/1':
      return `Engineer declined: ${event.data.reasons}`;
    case 'engineer-design-received/1':
      return `Engineer's design received: ${event.data.scope}`;
    case 'sign-off-reaffirmed/1':
      return `Engineer reaffirmed: ${event.data.statement}`;
    case 'sign-off-revoked/1':
      return `Engineer revoked: ${event.data.reason}`;
    case 'take-off-recorded/1':
      return `Take-off ${event.data.number} recorded from ${event.data.asked.measured_from}: ${event.data.result.totals.pieces} pieces`;
    case 'note-added/1':
      return `Note: ${event.data.words}`;
    default:
      return wordsAfterOrder(event);
  }
}
