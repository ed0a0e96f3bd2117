// The editions that come with the product. A company publishes its own on top of them.

import { editionOf, type Edition } from './edition.js';
import { ALL_RULES } from './rules.js';

export const EDITION_1: Edition = editionOf(
  1,
  '2026-01-01',
  'The first edition: every rule with its own severity and settings.',
  ALL_RULES,
);
