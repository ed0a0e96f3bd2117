// Papers of an invented company for the tests: an order in its second revision, an engineer packet, a
// paint warranty and the letter on a claim under it.

import { createHash } from 'node:crypto';
import {
  decisionRecord,
  type DecisionLetter,
  type EngineerPacket,
  type WarrantyPaper,
} from '#jobs';
import { BARN, playUpTo } from '../libs/jobs/job-files.js';

export const CAUTIONS = [
  'An office aid: local code and the authority having jurisdiction govern. What spans needs a licensed engineer. A panel that passes is not thereby walkable.',
  'Falls, fragile roofs, slick metal, wind while handling, power lines: bundles land only where the landing place says. Oversize spacing or rotten framing found: stop and call.',
];
const JOB = { number: '2026-0142', name: 'House on the ridge' };
export { ORDER } from './sample-order.js';

const barn = decisionRecord('job-1', playUpTo(BARN, 'gauge').events, {}).surfaces[0]!;
export const PACKET: EngineerPacket = {
  document: 'engineer-packet',
  job: { number: '2026-0143', name: 'Hay barn' },
  request: 'r1',
  engineer: 'Avery Stone, PE (invented)',
  site: '12 County Road, Anytown KS',
  jurisdiction: 'KS',
  frozen_at: '2026-03-02T09:10:00.000000Z',
  expires: '2026-04-01',
  scope: 'panel and attachment of the south roof',
  exclusions: 'the frame itself',
  surfaces: [
    {
      id: 's1',
      name: barn.name,
      kind: barn.kind,
      selected: 'steel-0.0187-ss-80',
      fastener_name: 'Screw #14 with washer',
      evaluation: barn.gauge!,
      required: barn.gauge!.sign_off_required,
      panel: [
        ['Profile', 'Ribbed 36, 36 in wide'],
        ['Finish', 'steel, AZ50, SMP, earth tone'],
        ['Lies on', 'purlins'],
      ],
      exceptions: ['the capacity of the screws is calculated, not tested'],
    },
  ],
  cautions: CAUTIONS,
};

export const TERMS = Buffer.from('The text of the warrantor, unchanged. Invented.');
export const WARRANTY: WarrantyPaper = {
  document: 'warranty',
  job: JOB,
  number: '1',
  kind: 'paint',
  issued_at: '2026-06-30T12:00:00.000000Z',
  title: 'limited',
  full_tests_not_met: ['remedy free of charge in reasonable time'],
  consumer_product: true,
  warrantor: { name: 'Invented Coil Coating', address: '1 Mill Lane, Anytown KS' },
  passed_on_by: 'Ridge & Valley Roofing (invented)',
  owner: 'Sample Owner',
  surfaces: ['South roof'],
  start: '2026-04-12',
  start_because: 'the day of completion',
  years: 30,
  terms: [
    { what: 'film integrity', limit: 'no peel, no crack', years: 30 },
    { what: 'fade, roof, dark colors', limit: '5 units, scale not named', years: 20 },
    { what: 'chalk', limit: 'not under 8', years: 20 },
  ],
  disclosures: [
    { item: '1', words: 'The first owner, and one later owner with notice.' },
    {
      item: '2',
      words: 'The paint film on the sheets named here. Not: dirt, scratches, cut edges.',
    },
    {
      item: '3',
      words: 'Repaint, replace or refund the price of the sheet; never labor after year 10.',
    },
    { item: '4', words: 'From the day of completion, for the years of each term.' },
    {
      item: '5',
      words:
        'Write within 30 days of seeing it to the Claims Office at the address above, with photographs taken from the ground.',
    },
    { item: '7', words: 'Implied warranties last no longer than this warranty.' },
    { item: '8', words: 'Damage to the inside of the house is not paid for.' },
  ],
  exclusions: ['standing water', 'touch-up paint'],
  exclusions_triggered: ['paint registered 11 days late'],
  registration: { due_by: '2026-06-11', filed: '2026-06-22', late_days: 11 },
  transfer: 'once',
  full_years: 10,
  supplier_terms: {
    name: 'terms.txt',
    digest: createHash('sha256').update(TERMS).digest('hex'),
    version: 'invented terms, edition 3',
  },
  cautions: [],
};
export const LETTER: DecisionLetter = {
  document: 'decision-letter',
  job: JOB,
  claim: '1',
  kind: 'fade',
  surface: 'South roof',
  lot: 'coil-7',
  notice: '2034-05-02',
  to: { name: 'Sample Owner', address: ['12 County Road', 'Anytown KS'] },
  from: { name: 'Ridge & Valley Roofing (invented)', address: ['2 Works Road', 'Anytown KS'] },
  decided_at: '2034-06-01T10:00:00.000000Z',
  decided_by: { name: 'Robin Hale', role: 'warranty-reviewer' },
  decision: 'declined',
  reason: 'the warrantor must first name the scale of its term',
  clause: 'paint terms, section 2',
  warranty: 'document 1, paint finish',
  readings: [
    {
      on: '2034-05-20',
      words: 'color in Hunter, illuminant C, 2-degree observer, by colorimeter 3, after washing',
    },
  ],
  tests: [
    {
      test: 'fade against the term',
      outcome: 'open',
      words: 'the term names no scale: 5.6 in CIELAB, 4.2 in CIEDE2000; never assumed',
    },
    { test: 'term in force', outcome: 'met', words: 'notice in year 9 of 20' },
  ],
  findings: [
    {
      rule: 'CLAIM-03',
      outcome: 'not-evaluated',
      words: 'A term without a scale is an open question.',
    },
  ],
  exclusions_triggered: ['paint registered 11 days late'],
  share_left: '12 of 20 years, 60 %',
  reply: 'Answer in writing to the address above; you may ask for the whole record.',
  cautions: ['Photograph from the ground: no claim needs anyone on a roof.'],
};
