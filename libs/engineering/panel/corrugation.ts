// Section properties of an arc-and-tangent corrugation, per foot of width.

import { refused, result, step, type Outcome } from '../check.js';
import { cite } from '../sources.js';
import { degrees, inches, type Degrees, type Inches, type Quantity } from '../units.js';

export interface Corrugation {
  readonly A: Quantity<'in2/ft'>;
  readonly I: Quantity<'in4/ft'>;
  readonly S: Quantity<'in3/ft'>;
  /** Radius of gyration. */
  readonly r: Inches;
  readonly tangentAngle: Degrees;
  readonly tangentLength: Inches;
}

const GEOMETRY = cite('mechanics', 'arc and tangent');

/**
 * Solves 2 r sin D + TL cos D = p/2 and 2 r (1 - cos D) + TL sin D = d with the mid-line radius
 * r = R + t/2, then integrates the annular arcs and the tangents with their thickness.
 * p pitch, d depth crest to valley on one surface, R inside radius, t base thickness, all in
 * inches. Valid where a tangent exists at no more than 90 degrees; else refused. Left out:
 * effective width (arcs and short tangents are taken as fully effective), longitudinal seams.
 */
export function corrugation(p: Inches, d: Inches, R: Inches, t: Inches): Outcome<Corrugation> {
  const r = R + t / 2;
  const half = p / 2;
  const lengthSquared = half * half + d * d - 4 * r * d;
  if (lengthSquared < 0) {
    return refused({
      pointer: '/inside_radius_in',
      message: `the arcs alone are larger than the wave: the mid-line radius must be at most ${
        (half * half + d * d) / (4 * d)
      } in`,
    });
  }
  const TL = Math.sqrt(lengthSquared);
  const D = Math.atan2(half, 2 * r - d) - Math.atan2(TL, 2 * r);
  if (D > Math.PI / 2) {
    return refused({
      pointer: '/depth_in',
      message: 'the tangent would lean past upright: the wave is too deep for its pitch',
    });
  }
  const A = (12 * t * (2 * r * D + TL)) / half;
  const I = (12 * (2 * arcInertia(d / 2 - r, r, t, D) + tangentInertia(TL, t, D))) / half;
  const value: Corrugation = {
    A: A as Corrugation['A'],
    I: I as Corrugation['I'],
    S: (I / ((d + t) / 2)) as Corrugation['S'],
    r: inches(Math.sqrt(I / A)),
    tangentAngle: degrees((D * 180) / Math.PI),
    tangentLength: inches(TL),
  };
  return result(value, steps(r, value), [
    'base steel thickness; depth is crest to valley on one surface; fully effective',
  ]);
}

/** Arc of angle D from the crest, its center at height c: integral of (c + rho cos)^2 rho. */
function arcInertia(c: number, r: number, t: number, D: number): number {
  const area = r * t * D;
  const second = r * r * t + t ** 3 / 12;
  const third = r ** 3 * t + (r * t ** 3) / 4;
  return c * c * area + 2 * c * second * Math.sin(D) + third * (D / 2 + Math.sin(2 * D) / 4);
}

function tangentInertia(TL: number, t: number, D: number): number {
  return (t * TL ** 3 * Math.sin(D) ** 2) / 12 + (TL * t ** 3 * Math.cos(D) ** 2) / 12;
}

const steps = (r: number, c: Corrugation) => [
  step('r_mid', r, 'in', 'R + t/2', GEOMETRY),
  step('TL', c.tangentLength, 'in', 'sqrt((p/2)^2 + d^2 - 4 r d)', GEOMETRY),
  step('D', c.tangentAngle, 'deg', 'atan((p/2)/(2 r - d)) - atan(TL/(2 r))', GEOMETRY),
  step('A', c.A, 'in2/ft', '12 t (2 r D + TL)/(p/2)', GEOMETRY),
  step('I', c.I, 'in4/ft', 'annular arcs and tangents with thickness terms', GEOMETRY),
  step('S', c.S, 'in3/ft', 'I/((d + t)/2)', GEOMETRY),
  step('r', c.r, 'in', 'sqrt(I/A)', GEOMETRY),
];
