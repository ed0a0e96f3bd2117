// What is under the new roof: old coverings left in place, framing that must be sound,
// underlayment, and air too humid for a fleece.

import { cite, COMMON_PRACTICE } from '#engineering';
import { measured, recorded, text } from './figures.js';
import { fail, notApplicable, pass, rule, unknown, unknownOf } from './rule.js';
import { isSloped } from './style.js';

const MOST_LAYERS = 1;

export const layersUnderneath = rule({
  id: 'SUB-06',
  version: 1,
  title: 'At most one old roof stays',
  stage: 'substrate',
  class: 'code',
  severity: 'refuse',
  says: 'A roof is not laid over two or more old roof coverings; they come off first.',
  cites: [cite('ibc-2018', '1511.3.1.1, from memory')],
  reads: ['reroof', 'shingle_layers'],
  settings: {},
  check: ({ reroof, shingle_layers }) => {
    if (reroof === undefined) return unknown('reroof');
    if (!reroof) return notApplicable('not a reroof');
    if (shingle_layers === undefined) return unknown('shingle_layers');
    const layers = recorded('layers left', shingle_layers, '');
    const left = measured(
      recorded('most layers', MOST_LAYERS, ''),
      MOST_LAYERS - shingle_layers,
      '',
      0,
    );
    if (shingle_layers <= MOST_LAYERS) return pass(undefined, [layers], left);
    return fail(
      `${text(layers)} old layers would stay; at most ${MOST_LAYERS} may`,
      [layers],
      left,
    );
  },
});

export const soundOldRoof = rule({
  id: 'SUB-07',
  version: 1,
  title: 'What stays underneath is sound',
  stage: 'substrate',
  class: 'code',
  severity: 'refuse',
  says: 'A roof is not laid over a covering or deck that is wet or rotten, nor over slate or tile.',
  cites: [cite('ibc-2018', '1511.3.1.1, from memory')],
  reads: ['reroof', 'old_roof_left'],
  settings: {},
  check: ({ reroof, old_roof_left }) => {
    if (reroof === undefined) return unknown('reroof');
    if (!reroof) return notApplicable('not a reroof');
    if (old_roof_left === undefined) return unknown('old_roof_left');
    if (old_roof_left === 'wet-or-rotten')
      return fail('what would stay underneath is wet or rotten');
    if (old_roof_left === 'slate-or-tile') return fail('slate or tile would stay underneath');
    return pass();
  },
});

export const soundFraming = rule({
  id: 'SUB-08',
  version: 1,
  title: 'The framing is sound',
  stage: 'substrate',
  class: 'physics',
  severity: 'refuse',
  says:
    'Rotten, rusted through or broken framing carries nothing: stop, call the engineer, and do ' +
    'not walk on it.',
  cites: [COMMON_PRACTICE],
  reads: ['open_framing', 'framing_sound'],
  settings: {},
  check: ({ open_framing, framing_sound }) => {
    if (open_framing === undefined) return unknown('open_framing');
    if (!open_framing) return notApplicable('not open framing');
    if (framing_sound === undefined) return unknown('framing_sound');
    return framing_sound ? pass() : fail('the framing is not sound: stop and call the engineer');
  },
});

export const underlaymentOnDeck = rule({
  id: 'SUB-09',
  version: 1,
  title: 'Underlayment on a solid deck',
  stage: 'substrate',
  class: 'code',
  severity: 'caution',
  says: 'A metal roof on a solid deck has an underlayment that stands the heat under metal.',
  cites: [cite('ibc-2018', '1507.1.1, from memory')],
  reads: ['kind', 'open_framing', 'underlayment'],
  settings: {},
  check: ({ kind, open_framing, underlayment }) => {
    if (kind === undefined || open_framing === undefined) return unknownOf({ kind, open_framing });
    if (open_framing || !isSloped(kind)) return notApplicable('not a roof on a solid deck');
    if (underlayment === undefined) return unknown('underlayment');
    return underlayment === 'none' ? fail('the deck has no underlayment') : pass(underlayment);
  },
});

export const fleeceOverHumidAir = rule({
  id: 'SUB-10',
  version: 1,
  title: 'A fleece is not enough over humid air',
  stage: 'substrate',
  class: 'guidance',
  severity: 'caution',
  says:
    'An absorbing fleece holds the drops of a night and must dry by day; over lastingly humid ' +
    'space a vapor retarder or a vented deck is wanted.',
  cites: [COMMON_PRACTICE],
  reads: ['inside_air', 'condensation_control'],
  settings: {},
  check: ({ inside_air, condensation_control }) => {
    if (condensation_control === undefined) return unknown('condensation_control');
    if (condensation_control !== 'absorbing-fleece') return notApplicable('no absorbing fleece');
    if (inside_air === undefined) return unknown('inside_air');
    return inside_air === 'humid' ? fail('an absorbing fleece hangs over humid space') : pass();
  },
});

export const RECOVER_RULES = [
  layersUnderneath,
  soundOldRoof,
  soundFraming,
  underlaymentOnDeck,
  fleeceOverHumidAir,
] as const;
