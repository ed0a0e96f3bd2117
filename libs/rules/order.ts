// What must stand before an order: surfaces, signatures, facts, lengths, color, what is due, and
// whether the longest piece can be brought, landed and lifted.

import { COMMON_PRACTICE } from '#engineering';
import { listed, measured, recorded, text } from './figures.js';
import { answeredYes, nothingLeft } from './outstanding.js';
import { fail, pass, rule, unknown, unknownOf } from './rule.js';

const gate = {
  version: 1,
  stage: 'order',
  class: 'house-policy',
  severity: 'refuse',
  cites: [COMMON_PRACTICE],
} as const;

export const everySurfaceReady = rule({
  ...gate,
  id: 'ORDER-01',
  title: 'Every surface is ready',
  says: "Every stage of every surface is confirmed on today's facts; none is up for re-check.",
  ...nothingLeft('surfaces_not_ready', 'not ready'),
});

export const everySignOffStands = rule({
  ...gate,
  id: 'ORDER-02',
  title: 'Every required sign-off stands',
  class: 'physics',
  says: 'No order rests on a required sign-off that is missing, declined, revoked or up for re-check.',
  ...nothingLeft('sign_offs_not_standing', 'without a standing sign-off'),
});

export const noAssumedFacts = rule({
  ...gate,
  id: 'ORDER-03',
  title: 'No assumed facts',
  says: 'A quote may rest on assumptions, each labeled; an order may not.',
  ...nothingLeft('assumed_facts', 'still assumed'),
});

export const lengthsSigned = rule({
  ...gate,
  id: 'ORDER-04',
  title: 'Lengths are signed',
  says: 'Piece lengths are signed by who measured them, or marked hold or field-verify.',
  ...nothingLeft('lengths_not_signed', 'lengths not signed'),
});

export const colorFixed = rule({
  ...gate,
  id: 'ORDER-05',
  title: 'The color is fixed',
  says: 'Every surface has its exact color.',
  ...nothingLeft('colors_open', 'color still open'),
});

export const chipAccepted = rule({
  ...gate,
  id: 'ORDER-06',
  title: 'A physical chip is accepted',
  says: 'The customer has accepted a physical chip of each color; a screen shows no true color.',
  ...nothingLeft('chips_not_accepted', 'no physical chip accepted for'),
});

export const longestPiece = rule({
  ...gate,
  id: 'ORDER-12',
  title: 'The longest piece can be brought and lifted',
  says: 'The longest piece is no longer than truck, site and handling allow.',
  reads: ['longest_piece_ft', 'truck_limit_ft', 'site_limit_ft', 'handling_limit_ft'],
  settings: {},
  check: ({ longest_piece_ft, truck_limit_ft, site_limit_ft, handling_limit_ft }) => {
    const limits = { truck_limit_ft, site_limit_ft, handling_limit_ft };
    if (longest_piece_ft === undefined) return unknown('longest_piece_ft');
    const piece = recorded('longest piece', longest_piece_ft, 'ft');
    const named = [
      { name: 'truck', limit: truck_limit_ft },
      { name: 'site', limit: site_limit_ft },
      { name: 'handling', limit: handling_limit_ft },
    ];
    const short = named.flatMap(({ name, limit }) =>
      limit !== undefined && limit < longest_piece_ft ? [recorded(name, limit, 'ft')] : [],
    );
    const known = named.flatMap(({ name, limit }) =>
      limit === undefined ? [] : [recorded(name, limit, 'ft')],
    );
    const tightest = known.sort((a, b) => Number(a.v) - Number(b.v))[0];
    const left = tightest && measured(tightest, Number(tightest.v) - longest_piece_ft, 'ft', 2);
    if (short.length > 0) {
      const over = listed(short.map((each) => `${each.name} (${text(each)})`));
      return fail(
        `the longest piece of ${text(piece)} is too long for ${over}`,
        [piece, ...short],
        left,
      );
    }
    return Object.values(limits).includes(undefined)
      ? unknownOf(limits)
      : pass(undefined, [piece], left);
  },
});

export const oneFinishAPlane = rule({
  ...gate,
  id: 'ORDER-13',
  title: 'One finish and supplier on one plane',
  says:
    'Finish systems and suppliers are not mixed on one visible plane without signed acceptance, ' +
    'metallic colors least of all: they have a direction.',
  ...nothingLeft('planes_of_mixed_finish', 'mixed finish or supplier without signed acceptance'),
});

export const requirementsMet = rule({
  ...gate,
  id: 'ORDER-14',
  title: 'What was required is done',
  says: 'Everything that a rule made due before the order is done.',
  ...nothingLeft('requirements_due', 'still due'),
});

export const cautionsAcknowledged = rule({
  ...gate,
  id: 'ORDER-15',
  title: 'Cautions are acknowledged',
  says: 'Every caution has been acknowledged by name. That makes no roof safe or lawful.',
  ...nothingLeft('cautions_not_acknowledged', 'not acknowledged'),
});

export const landingPlace = rule({
  ...gate,
  id: 'ORDER-16',
  title: 'Bundles have a landing place',
  severity: 'require',
  says: 'The order says where bundles of that weight are set down; not on unchecked framing.',
  ...answeredYes('landing_place_named', 'no landing place is named for the bundles'),
});

export const ORDER_RULES = [
  everySurfaceReady,
  everySignOffStands,
  noAssumedFacts,
  lengthsSigned,
  colorFixed,
  chipAccepted,
  longestPiece,
  oneFinishAPlane,
  requirementsMet,
  cautionsAcknowledged,
  landingPlace,
] as const;
