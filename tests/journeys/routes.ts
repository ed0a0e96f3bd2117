// Every page of the office with the person who opens it, for screenshots and for checks that hold
// on every page.

import { BARN } from '../../apps/cli/demonstration/barn.js';
import { HOUSE } from '../../apps/cli/demonstration/house.js';
import {
  ADMINISTRATOR,
  CREW,
  ENGINEER,
  MANAGER,
  OFFICE,
  REVIEWER,
  STANDARDS,
} from '../../apps/cli/demonstration/people.js';
import { DRAFT } from '../../apps/cli/demonstration/rules-draft.js';
import { WORKSHOP } from '../../apps/cli/demonstration/workshop.js';
import type { Who } from './browser.js';

export interface PageOf {
  readonly name: string;
  readonly path: string;
  /** null: nobody is signed in. */
  readonly who: Who | null;
}

const surface = (job: { steps: readonly unknown[] }): string => {
  const text = JSON.stringify(job.steps);
  return /"surfaces":\[\{"id":"([^"]+)"/.exec(text)?.[1] ?? 'roof';
};
const stage = (job: { id: string; steps: readonly unknown[] }, name: string): string =>
  `/jobs/${job.id}/surfaces/${surface(job)}/${name}`;

export const PAGES: readonly PageOf[] = [
  { name: 'sign-in', path: '/sign-in', who: null },
  { name: 'sign-in-link', path: '/sign-in/not-a-link', who: null },
  { name: 'setup', path: '/setup/not-a-link', who: null },
  { name: 'packet-link', path: '/packet/not-a-link', who: null },
  { name: 'customer-link', path: '/customer/not-a-link', who: null },
  { name: 'jobs', path: '/jobs', who: MANAGER },
  { name: 'jobs-filtered', path: '/jobs?state=Ready&sort=-number', who: OFFICE },
  { name: 'jobs-none', path: '/jobs?find=nothing-is-called-this', who: OFFICE },
  { name: 'open-job', path: '/jobs/new', who: OFFICE },
  { name: 'import', path: '/jobs/import', who: OFFICE },
  { name: 'job', path: `/jobs/${BARN.id}`, who: OFFICE },
  { name: 'job-open', path: `/jobs/${WORKSHOP.id}`, who: OFFICE },
  { name: 'take-off', path: `/jobs/${HOUSE.id}/take-off/${surface(HOUSE)}`, who: OFFICE },
  { name: 'take-off-new', path: `/jobs/${BARN.id}/take-off/${surface(BARN)}`, who: OFFICE },
  {
    name: 'take-off-open',
    path: `/jobs/${WORKSHOP.id}/take-off/${surface(WORKSHOP)}`,
    who: OFFICE,
  },
  { name: 'order', path: `/jobs/${BARN.id}/order`, who: OFFICE },
  ...[
    'open-change-order',
    'record-as-built',
    'record-inspection',
    'record-completion',
    'open-claim',
  ].map((each) => ({
    name: `after-${each}`,
    path: `/jobs/${BARN.id}/after/${each}`,
    who: MANAGER,
  })),
  { name: 'reminders', path: '/reminders', who: MANAGER },
  { name: 'report', path: '/report', who: MANAGER },
  { name: 'password', path: '/password', who: OFFICE },
  { name: 'change-job', path: `/jobs/${BARN.id}/change`, who: OFFICE },
  { name: 'facts', path: `/jobs/${BARN.id}/facts`, who: OFFICE },
  {
    name: 'facts-stage',
    path: `/jobs/${WORKSHOP.id}/facts?surface=${surface(WORKSHOP)}&stage=hazards`,
    who: OFFICE,
  },
  ...['style', 'coating', 'hazards', 'substrate', 'gauge', 'sign-off'].map((each) => ({
    name: `stage-${each}`,
    path: stage(BARN, each),
    who: OFFICE,
  })),
  { name: 'stage-hazards-form', path: stage(WORKSHOP, 'hazards'), who: OFFICE },
  { name: 'stage-not-yet', path: stage(WORKSHOP, 'gauge'), who: OFFICE },
  { name: 'stage-house-substrate', path: stage(HOUSE, 'substrate'), who: OFFICE },
  { name: 'history', path: `/jobs/${BARN.id}/history`, who: REVIEWER },
  { name: 'record', path: `/jobs/${BARN.id}/record`, who: REVIEWER },
  { name: 'proof', path: `/jobs/${BARN.id}/proof`, who: REVIEWER },
  {
    name: 'compare',
    path: `/jobs/${BARN.id}/compare?first=2020-01-01T00:00:00.000Z`,
    who: REVIEWER,
  },
  { name: 'request', path: `/jobs/${BARN.id}/requests/barn-1`, who: ENGINEER },
  { name: 'sign-offs', path: '/sign-offs', who: ENGINEER },
  { name: 'spanning', path: '/spanning', who: MANAGER },
  { name: 'decisions', path: '/decisions', who: REVIEWER },
  { name: 'rules', path: '/rules', who: STANDARDS },
  { name: 'rules-edition', path: '/rules/2', who: STANDARDS },
  { name: 'rules-draft-new', path: '/rules/drafts/new', who: STANDARDS },
  { name: 'rules-draft', path: `/rules/drafts/${DRAFT}`, who: STANDARDS },
  ...['change', 'impact', 'publish'].map((each) => ({
    name: `rules-draft-${each}`,
    path: `/rules/drafts/${DRAFT}/${each}`,
    who: STANDARDS,
  })),
  { name: 'catalogue', path: '/catalogue', who: STANDARDS },
  { name: 'catalogue-edition', path: '/catalogue/1', who: STANDARDS },
  { name: 'catalogue-import', path: '/catalogue/import', who: STANDARDS },
  { name: 'catalogue-profile', path: '/catalogue/1/deep-36', who: STANDARDS },
  { name: 'catalogue-profile-by-test', path: '/catalogue/1/mech-24', who: STANDARDS },
  { name: 'people', path: '/admin', who: ADMINISTRATOR },
  { name: 'company', path: '/admin/company', who: ADMINISTRATOR },
  { name: 'keys', path: '/admin/keys', who: ADMINISTRATOR },
  { name: 'backups', path: '/admin/backups', who: ADMINISTRATOR },
  { name: 'health', path: '/admin/health', who: ADMINISTRATOR },
  { name: 'readings', path: '/admin/readings', who: ADMINISTRATOR },
  { name: 'readings-reviewer', path: '/admin/readings?what=evidence', who: REVIEWER },
  { name: 'disposal', path: '/admin/disposal', who: ADMINISTRATOR },
  { name: 'feed', path: '/admin/feed', who: ADMINISTRATOR },
  { name: 'not-permitted', path: '/admin', who: OFFICE },
  { name: 'not-found', path: '/nowhere', who: OFFICE },
  { name: 'help', path: '/help', who: OFFICE },
  { name: 'phone-list', path: '/phone', who: CREW },
  { name: 'phone', path: `/phone/${HOUSE.id}/${surface(HOUSE)}`, who: CREW },
];
