// The calculator of attachment: spacing against uplift, from an entered or a calculated capacity.

import { calculator, STRUCTURE_CAUTION } from '../calculator.js';
import { refused, result, type Outcome } from '../check.js';
import type { Shape } from '../input.js';
import { inches, ksi, pounds, psf } from '../units.js';
import {
  attachmentCheck,
  enteredCapacity,
  screwCapacity,
  spacingNeeded,
  spacingStep,
  woodCapacity,
  type FastenerCapacity,
} from './attachment.js';
import { JOINT, joint, positive, type JointInput } from './joint-input.js';
import type { ScrewEdition } from './screw.js';
import { DURATION, durationOf, gravityOf, WOOD } from './wood-input.js';
import { WOOD_FASTENERS, type WoodFastener } from './wood-withdrawal.js';
import type { LoadDuration, WoodSpecies } from './wood.table.js';

const ATTACHMENT = {
  uplift_psf: {
    kind: 'number',
    says: 'net ASD pressure away from the surface; its magnitude, or negative as suction',
    unit: 'psf',
  },
  tributary_width_in: positive('width each line of fasteners holds', 'in'),
  fastener: {
    kind: 'choice',
    of: ['screw', ...WOOD_FASTENERS, 'clip'],
    says: 'what holds the panel; a clip only with capacity_lb from its test',
  },
  capacity_lb: {
    ...positive('allowable force of one fastener, instead of steel or wood', 'lb'),
    optional: true,
  },
  steel: {
    kind: 'group',
    says: 'for a screw into steel: as in the calculator screw',
    fields: JOINT,
    optional: true,
  },
  wood: {
    kind: 'group',
    says: 'for a fastener into wood; pull-over of the sheet by t1, F_u1 and d_w',
    fields: {
      D_in: positive('diameter', 'in'),
      ...WOOD,
      thread_length_in: positive('thread in the member, without the tip', 'in'),
      ...DURATION,
      edition: JOINT.edition,
      t1_in: JOINT.t1_in,
      Fu1_ksi: JOINT.Fu1_ksi,
      dw_in: JOINT.dw_in,
    },
    optional: true,
  },
  spacing_in: { ...positive('spacing along the support', 'in'), optional: true },
} as const satisfies Shape;

export const attachment = calculator({
  name: 'attachment',
  says: 'Spacing of fasteners that an uplift needs, and utilization at a spacing',
  input: ATTACHMENT,
  output: {
    capacity_lb: 'allowable force of one fastener',
    governs: 'what limits it',
    utilization: 'demand over capacity, with spacing_in',
    spacing_needed_in: 'largest spacing that carries the uplift, not rounded',
  },
  cautions: [STRUCTURE_CAUTION],
  run: (input) => {
    const capacity = capacityOf(input);
    if (input.uplift_psf === 0) {
      const zero = { pointer: '/uplift_psf', message: 'must not be 0: nothing lifts' };
      return refused(zero, ...(capacity.ok ? [] : capacity.faults));
    }
    if (!capacity.ok) return capacity;
    const [uplift, width] = [psf(input.uplift_psf), inches(input.tributary_width_in)];
    const { value: fastener, steps, notes } = capacity;
    const base = {
      capacity_lb: fastener.capacity,
      governs: fastener.governs,
      spacing_needed_in: spacingNeeded(uplift, width, fastener.capacity),
    };
    if (input.spacing_in === undefined) {
      return result(base, [...steps, spacingStep(uplift, width, fastener.capacity)], notes);
    }
    const at = { uplift, tributaryWidth: width, spacing: inches(input.spacing_in) };
    const checked = attachmentCheck(at, fastener, steps);
    return result({ ...base, utilization: checked.utilization }, checked.steps, notes);
  },
});

interface CapacityInput {
  readonly fastener: string;
  readonly capacity_lb?: number | undefined;
  readonly steel?: JointInput | undefined;
  readonly wood?:
    | {
        readonly D_in: number;
        readonly G?: number | undefined;
        readonly species?: WoodSpecies | undefined;
        readonly thread_length_in: number;
        readonly duration_factor?: number | undefined;
        readonly load_duration?: LoadDuration | undefined;
        readonly edition: string;
        readonly t1_in: number;
        readonly Fu1_ksi: number;
        readonly dw_in: number;
      }
    | undefined;
}

/** Exactly one of entered, steel and wood, and the one that fits the fastener. */
function capacityOf(input: CapacityInput): Outcome<FastenerCapacity> {
  const { fastener, capacity_lb, steel, wood } = input;
  const given = [capacity_lb, steel, wood].filter((each) => each !== undefined).length;
  if (given !== 1) {
    const message = 'needs exactly one of capacity_lb, steel and wood';
    return refused({ pointer: '/capacity_lb', message });
  }
  if (capacity_lb !== undefined) return enteredCapacity(pounds(capacity_lb));
  if (fastener === 'clip') {
    const message = "a clip's capacity comes only from its test: enter it as capacity_lb";
    return refused({ pointer: '/fastener', message });
  }
  if (steel !== undefined) {
    if (fastener === 'screw') return under('/steel', screwCapacity(joint(steel)));
    return refused({ pointer: '/steel', message: `is for a screw, not for a ${fastener}` });
  }
  if (wood === undefined || fastener === 'screw') {
    return refused({ pointer: '/wood', message: 'is for lag, wood-screw and nail' });
  }
  return under('/wood', inWood(fastener as WoodFastener, wood));
}

function inWood(
  fastener: WoodFastener,
  wood: NonNullable<CapacityInput['wood']>,
): Outcome<FastenerCapacity> {
  const [G, duration] = [gravityOf(wood), durationOf(wood)];
  if (!G.ok || !duration.ok) {
    return refused(...(G.ok ? [] : G.faults), ...(duration.ok ? [] : duration.faults));
  }
  const head = {
    edition: wood.edition as ScrewEdition,
    t1: inches(wood.t1_in),
    Fu1: ksi(wood.Fu1_ksi),
    dw: inches(wood.dw_in),
  };
  const connection = {
    fastener,
    D: inches(wood.D_in),
    G: G.value,
    threadLength: inches(wood.thread_length_in),
    durationFactor: duration.value,
  };
  const capacity = woodCapacity(connection, head);
  const notes = [...new Set([...G.notes, ...duration.notes])];
  return capacity.ok ? { ...capacity, notes: [...capacity.notes, ...notes] } : capacity;
}

function under<T>(pointer: string, outcome: Outcome<T>): Outcome<T> {
  if (outcome.ok) return outcome;
  return refused(...outcome.faults.map((f) => ({ ...f, pointer: pointer + f.pointer })));
}
