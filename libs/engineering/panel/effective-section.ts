// Effective section of a sheet in bending: the neutral axis, the stresses and the effective widths
// found together (AISI S100-16 Appendix 1). The shape's top is the compression side.

import type { SheetShape } from './outline.js';
import { pieceOf, type Moments } from './moments.js';
import { S100_RULES, type PlateRules } from './plate.js';
import type { Element, Stresses } from './element.js';
import { flatElement } from './elements.js';
import { ribGroups, ribElement, type RibGroup } from './ribs.js';

export interface EffectiveSection {
  readonly A: number;
  readonly I: number;
  /** Height of the neutral axis in the shape's own y. */
  readonly y0: number;
  /** Distance of the extreme fibers. */
  readonly toCompression: number;
  readonly toTension: number;
  /** Stress of the extreme compression fiber, ksi. */
  readonly fc: number;
  /** I over the farther fiber. */
  readonly S: number;
  readonly elements: readonly Element[];
  readonly settled: boolean;
}

/** Gross section: everything effective. */
export function grossSection(shape: SheetShape): Omit<EffectiveSection, 'elements' | 'fc'> {
  return { ...sectionOf(shape, grossMoments(shape)), settled: true };
}

/** What every state of stress of one shape starts from. */
export interface SectionStart {
  /** Centroid of the gross section. */
  readonly y0: number;
  /** The ribbed flange each flat belongs to. */
  readonly groups: readonly (RibGroup | undefined)[];
  readonly bends: Moments;
}

export function sectionStart(shape: SheetShape): SectionStart {
  const gross = grossMoments(shape);
  const y0 = gross.first / gross.area;
  const groups: (RibGroup | undefined)[] = shape.flats.map(() => undefined);
  for (const group of ribGroups(shape, y0)) for (const m of group.members) groups[m] = group;
  return { y0, groups, bends: bendMoments(shape) };
}

/**
 * Effective section with `f` ksi at the farther extreme fiber: at F_y the section of first yield,
 * at service stress the section for deflection. Where tension yields first, the compression fiber
 * is at f y_c/y_t. Iterates until the neutral axis moves less than 1e-9 in; should the rule's jump
 * at psi = 0.236 keep it from settling, the smaller b2 is used throughout.
 */
export function effectiveSection(
  shape: SheetShape,
  f: number,
  E: number,
  rules: PlateRules = S100_RULES,
  start: SectionStart = sectionStart(shape),
): EffectiveSection {
  const context: Context = { shape, f, E, rules, start };
  let lesserB2 = false;
  let found = settle(context, lesserB2);
  if (!found.settled) {
    lesserB2 = true;
    found = settle(context, lesserB2);
  }
  const elements: Element[] = [];
  const moments = pass(context, found.y0, lesserB2, elements);
  const section = sectionOf(shape, moments);
  const fc = compressionStress(shape, section.y0, f);
  return { ...section, fc, elements, settled: found.settled };
}

interface Context {
  readonly shape: SheetShape;
  readonly f: number;
  readonly E: number;
  readonly rules: PlateRules;
  readonly start: SectionStart;
}

const SETTLED_IN = 1e-9;

/**
 * Fixed point of the neutral axis: two plain rounds, then one extrapolated; damped if it is slow.
 */
function settle(context: Context, lesserB2: boolean) {
  let y0 = context.start.y0;
  let last = NaN;
  for (let i = 0; i < 120; i++) {
    const m = pass(context, y0, lesserB2);
    const move = m.first / m.area - y0;
    if (Math.abs(move) < SETTLED_IN) return { y0: y0 + move, settled: true };
    const shrink = move / (y0 - last);
    const extrapolate = i % 3 === 2 && i < 30 && Math.abs(shrink) < 0.9;
    last = y0;
    y0 += i >= 30 ? move / 2 : extrapolate ? move / (1 - shrink) : move;
  }
  return { y0, settled: false };
}

function compressionStress(shape: SheetShape, y0: number, f: number): number {
  return f * Math.min(1, (shape.top - y0) / (y0 - shape.bottom));
}

/** Sums what is effective with the neutral axis at y0; writes the elements when asked. */
function pass(context: Context, y0: number, lesserB2: boolean, record?: Element[]): Moments {
  const { shape, f, E, rules, start } = context;
  const { groups, bends } = start;
  const fc = compressionStress(shape, y0, f);
  const stresses: Stresses = { y0, perInch: fc / (shape.top - y0), E, rules, lesserB2 };
  const sum = { area: bends.area, first: bends.first, second: bends.second };
  for (let i = 0; i < shape.flats.length; i++) {
    const flat = shape.flats[i]!;
    const group = groups[i];
    if (group === undefined) {
      const element = flatElement(shape, i, stresses, groups);
      pieceOf(flat, shape.t, 0, element.head, sum);
      pieceOf(flat, shape.t, flat.w - element.tail, flat.w, sum);
      record?.push(element);
      continue;
    }
    pieceOf(flat, shape.t, 0, flat.w, sum);
    if (i !== group.members[0]) continue;
    const element = ribElement(group, stresses);
    const { area, first, second } = group.moments;
    sum.area -= (1 - element.rho) * area;
    sum.first -= (1 - element.rho) * first;
    sum.second -= second - (element.rho * first * first) / area;
    record?.push(element);
  }
  return sum;
}

function bendMoments(shape: SheetShape): Moments {
  const sum = { area: 0, first: 0, second: 0 };
  for (const b of shape.bends) {
    sum.area += b.area;
    sum.first += b.first;
    sum.second += b.second;
  }
  return sum;
}

function grossMoments(shape: SheetShape): Moments {
  const sum = bendMoments(shape);
  for (const flat of shape.flats) pieceOf(flat, shape.t, 0, flat.w, sum);
  return sum;
}

function sectionOf(shape: SheetShape, m: Moments) {
  const y0 = m.first / m.area;
  const I = m.second - m.area * y0 * y0;
  const toCompression = shape.top - y0;
  const toTension = y0 - shape.bottom;
  return {
    A: m.area,
    I,
    y0,
    toCompression,
    toTension,
    S: I / Math.max(toCompression, toTension),
  };
}
