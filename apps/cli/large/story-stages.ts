// The first chapter: from the call to the gauge, with assumptions that are measured later, and quotes
// that go no further.

import type { Attachment } from '#jobs/contract';
import { amount } from '../demonstration/steps.js';
import { dayPlus } from './dice.js';
import { pressures, type Told } from './kinds.js';
import { BUILDING, recorded, say, SURFACE, type Chapter, type Look, type Plan } from './chapter.js';

export interface Chosen {
  readonly look: Look;
  /** Which of the kind's attachments it is; the next one is closer. */
  readonly tried: number;
}

export function* stagesToGauge(plan: Plan): Chapter<Chosen | undefined> {
  const { kind, dice } = plan;
  const substrate = kind.substrate(dice);
  yield* opening(
    plan,
    substrate.filter(([fact]) => fact === 'substrate'),
  );
  if (dice.chance(0.05)) return undefined;
  yield* say(dice.whole(1, 12), 'office', {
    type: 'choose-style',
    surface: SURFACE,
    profile: kind.profile,
    width: amount(kind.width, 'in'),
  });
  const coating = kind.coating(dice);
  yield* say(dice.whole(0, 9), 'office', { type: 'choose-coating', surface: SURFACE, ...coating });
  if (dice.chance(0.08)) {
    const { color: _, ...other } = kind.coating(dice);
    yield* say(dice.whole(1, 8), 'office', {
      type: 'choose-coating',
      surface: SURFACE,
      ...other,
      color: "as on the neighbor's house",
      reason: 'The customer changed the color.',
    });
  }
  yield* say(dice.whole(0, 6), 'office', hazards(plan));
  if (dice.chance(0.04)) return undefined;
  const reroof = isReroof(plan);
  yield* say(
    dice.whole(1, 15),
    'crew',
    recorded('measured', 'Tape and gauge, on site', [
      SURFACE,
      ...substrate,
      ['treated-lumber-contact', 'none'],
    ]),
  );
  const look = yield* say(dice.whole(0, 5), 'office', {
    type: 'confirm-substrate',
    surface: SURFACE,
    provisional: reroof,
  });
  return yield* gaugeFrom(plan, look, 0);
}

/** The first attachment, from this one on, with which some option is recommended. */
export function* gaugeFrom(
  { kind, dice }: Plan,
  look: Look,
  from: number,
  reason?: string,
): Chapter<Chosen | undefined> {
  const bound = boundAttachment(look);
  const tried = kind.attachments.findIndex(
    (each, i) =>
      (bound ? JSON.stringify(each) === bound : i >= from) && look.recommend(each) !== null,
  );
  const attachment = kind.attachments[tried];
  if (!attachment) return undefined;
  return { look: yield* say(dice.whole(0, 4), 'office', select(look, attachment, reason)), tried };
}

/** Where an engineer approved with a condition, the attachment that binds. */
function boundAttachment({ job }: Look): string | undefined {
  const signOff = job.signOffs[job.surfaces[SURFACE]?.signOff ?? ''];
  const bound =
    signOff?.standing === 'approved-with-conditions' ? signOff.conditions?.attachment : undefined;
  return bound && JSON.stringify(bound);
}

function select(look: Look, attachment: Attachment, reason: string | undefined) {
  const option = look.recommend(attachment) ?? '';
  return {
    type: 'select-gauge' as const,
    surface: SURFACE,
    option,
    attachment,
    ...(reason === undefined ? {} : { reason }),
  };
}

/** Decided by the job's own number, so that every chapter knows it without being told. */
export const isReroof = ({ kind, turn }: Plan): boolean => kind.overOldRoof && turn % 4 !== 0;

const JURISDICTIONS = ['OH', 'KS', 'NC', 'MI', 'TX'] as const;
export const jurisdictionOf = ({ turn }: Plan): string =>
  JURISDICTIONS[turn % JURISDICTIONS.length] ?? 'OH';

function* opening(plan: Plan, lies: readonly Told[]): Chapter {
  const { kind, dice, number, name, site, customer } = plan;
  yield* say(0, 'office', {
    type: 'open-job',
    number,
    name,
    site,
    parties: { customer, owner: customer },
    priorities: [dice.pick(['value', 'long-life', 'best-appearance', 'quick-delivery'] as const)],
    jurisdiction: jurisdictionOf(plan),
    due: dayPlus(plan.opened, dice.whole(90, 200)),
    buildings: [{ id: BUILDING, name }],
    surfaces: [
      {
        id: SURFACE,
        building: BUILDING,
        name: kind.surface === 'roof' ? 'Main roof' : 'Front wall',
        kind: kind.surface,
      },
    ],
  });
  yield* say(0, 'office', documentedFacts(plan));
  return yield* say(dice.whole(0, 3), 'office', toldFacts(plan, lies));
}

const documentedFacts = ({ kind, dice }: Plan) =>
  recorded(
    'document',
    'Letter of the building department (invented)',
    [
      null,
      ['exposure', dice.pick(['B', 'C'])],
      ['wind-speed', amount(dice.pick([105, 110, 115, 120]), 'mph')],
      ['ground-snow', amount(dice.pick([5, 10, 15, 20, 25, 30]), 'psf')],
      ['ground-snow-basis', 'service-50yr'],
      ['design-stone', amount(dice.pick(['1', '1.5', '2']), 'in')],
      ['permit-asked', true],
    ],
    [
      BUILDING,
      ['mean-roof-height', amount(dice.whole(14, 30), 'ft')],
      ['width', amount(dice.whole(28, 80), 'ft')],
      ['length', amount(dice.whole(40, 140), 'ft')],
      ['roof-shape', 'gable'],
      ['roof-slope', amount(4, 'per-12')],
      ['risk-category', 'II'],
      ['residential', kind.dwelling],
    ],
  );

const BARE_DECK = [
  ['shingle-layers', amount(0, 'layers')],
  ['old-roof-left', 'none'],
] as const;

function toldFacts(plan: Plan, lies: readonly Told[]) {
  const { kind, dice } = plan;
  const reroof = isReroof(plan);
  return recorded(
    dice.chance(0.2) ? 'assumed' : 'told',
    'The customer, by telephone',
    [
      null,
      ['water', 'none'],
      ['corrosivity', dice.pick(['C2', 'C3'])],
      ['animals-or-fertilizer', false],
    ],
    [
      BUILDING,
      ['enclosure', 'enclosed'],
      ['any-side-open', false],
      ['doors-open-in-storms', false],
      ['inside-air', kind.dwelling ? 'heated' : 'unheated'],
    ],
    [
      SURFACE,
      ['slope', amount(kind.surface === 'roof' ? dice.whole(3, 8) : 60, 'per-12')],
      ['area', amount(dice.whole(12, 60), 'squares')],
      ['longest-piece', amount(dice.whole(12, 38), 'ft')],
      ['reroof', reroof],
      ['over-doors-or-walks', dice.chance(0.3)],
      ['copper-or-lead-above', false],
      ['masonry-after-panels', false],
      ['snow-retention', 'none'],
      ['fastener-metal', kind.fastenerMetal],
      ...(reroof ? BARE_DECK : []),
      ...lies,
      ['oil-canning-disclosed', true],
      ['weathertightness-asked', false],
    ],
  );
}

function hazards({ kind, dice, opened }: Plan) {
  const source = {
    document: 'Pressures and snow of the building department (invented)',
    date: opened,
  };
  const [least, most] = kind.pressure;
  return {
    type: 'assess-hazards' as const,
    surface: SURFACE,
    hazards: {
      wind: {
        method: 'entered' as const,
        basis: 'ASD' as const,
        by_engineer: false,
        source,
        zones: pressures(kind, dice.whole(least, most)),
      },
      snow:
        kind.surface === 'wall'
          ? { method: 'not-applicable' as const, why: 'a wall carries no snow' }
          : ({
              method: 'entered',
              basis: 'ASD' as const,
              by_engineer: false,
              roof: amount(dice.pick([5, 10, 15, 20]), 'psf'),
              source,
            } as const),
    },
  };
}
