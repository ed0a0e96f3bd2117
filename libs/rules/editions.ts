// The editions that come with the product. A company publishes its own on top of them.

import { editionOf, type Edition } from './edition.js';
import { ALL_RULES, STARTING_RULES } from './rules.js';

export const EDITION_1: Edition = editionOf(
  1,
  '2026-01-01',
  'The starting rules with their own severities and settings.',
  STARTING_RULES,
);

export const EDITION_2: Edition = editionOf(
  2,
  '2026-10-01',
  'The full rulebook: seams, coating mass, contact, snow retention, recover, attachment.',
  ALL_RULES,
);
