// Wind pressure on the cladding of one building's roof, overhangs and walls, zone by zone, at
// strength level: every zone and effective wind area with its coefficients and steps.

import { refused, result, type Fault, type Outcome, type Step } from '../check.js';
import type { Feet, Psf } from '../units.js';
import { dimensionA } from './areas.js';
import { GCPI } from './exposure.table.js';
import { coefficientsFor } from './roof-figure.js';
import type { WindSurfaceInput } from './surface-input.js';
import { surfaceNotes } from './surface-notes.js';
import { HIGHEST_FT, velocityPressure } from './velocity-pressure.js';
import { pressureBasis, surfaceSteps, zonesAt, type ZonePressure } from './zone-pressure.js';

export interface WindSurface {
  readonly Kz: number;
  readonly Kd: number;
  readonly Ke: number;
  readonly qh: Psf;
  /** Magnitude; both signs were taken. */
  readonly GCpi: number;
  readonly a: Feet;
  readonly figure: string;
  readonly zones: readonly ZonePressure[];
}

/**
 * p = q_h [(GC_p) - (GC_pi)] (7-10 Eq. 30.4-1, 7-16 Eq. 30.3-1), q_h K_d [...] (7-22 Eq. 30.3-1),
 * in psf, not less than 16 psf either way (30.2.2). Valid for h <= 60 ft, theta <= 45 degrees
 * (monoslope 30, flat 7). Left out: K_zt from topography, the large-volume reduction of the
 * internal pressure, stepped, multispan and sawtooth roofs, free roofs of open buildings, the 0.9
 * on low-roof walls and the permitted reduction of zone 3 behind a parapet.
 */
export function windOnSurface(input: WindSurfaceInput): Outcome<WindSurface> {
  const faults = windFaults(input);
  if (faults.length > 0) return refused(...faults);
  const { edition, roof, h } = input;
  const velocity = velocityPressure(input);
  const GCpi = GCPI[input.enclosure];
  const coefficients = coefficientsFor(edition, roof.shape, roof.theta, h / roof.width);
  const basis = pressureBasis(edition, velocity.qh, GCpi, coefficients, {
    overhang: roof.overhang,
    wallPositiveAtEdge: takesWallPositive(input),
  });
  const zones: ZonePressure[] = [];
  const steps: Step[] = [...velocity.steps];
  const a = dimensionA(edition, roof.width, h, roof.theta);
  surfaceSteps(steps, edition, GCpi, a);
  for (const area of input.areas) zonesAt(basis, area, zones, steps);
  const value: WindSurface = {
    Kz: velocity.Kz,
    Kd: velocity.Kd,
    Ke: velocity.Ke,
    qh: velocity.qh,
    GCpi,
    a,
    figure: coefficients.name,
    zones,
  };
  return result(value, steps, [...velocity.notes, ...surfaceNotes(input, coefficients, zones)]);
}

const takesWallPositive = (input: WindSurfaceInput): boolean =>
  input.edition !== '7-10' && input.roof.theta <= 7 && (input.parapet ?? 0) >= 3;

/** What lies outside the figures, each with a pointer into the calculator's input. */
export function windFaults(input: WindSurfaceInput): readonly Fault[] {
  const { roof } = input;
  const faults: Fault[] = [];
  const fault = (pointer: string, message: string): void => void faults.push({ pointer, message });
  if (!(input.V > 0)) fault('/V_mph', 'must be over 0 mph');
  if (!(input.h > 0 && input.h <= HIGHEST_FT)) {
    fault(
      '/h_ft',
      `must be over 0 and at most ${HIGHEST_FT} ft: higher buildings have other figures`,
    );
  }
  if (!(input.Kzt >= 1)) fault('/Kzt', 'must be at least 1');
  if (!(roof.width > 0)) fault('/roof/width_ft', 'must be over 0 ft');
  if (!(roof.length >= roof.width)) {
    fault('/roof/length_ft', 'must not be less than width_ft, the least horizontal dimension');
  }
  if (!(roof.theta >= 0 && roof.theta <= 45 + 1e-6)) {
    fault('/roof/theta_deg', 'must be from 0 to 45 degrees: no figure covers more');
  } else if (roof.shape === 'flat' && roof.theta > 7) {
    fault('/roof/theta_deg', 'a roof over 7 degrees is not flat: name its shape');
  } else if (roof.shape === 'monoslope' && roof.theta > 30 + 1e-6) {
    fault('/roof/theta_deg', 'must be at most 30 degrees for a monoslope roof');
  }
  if (input.edition === '7-10' && input.enclosure === 'partially-open') {
    fault('/enclosure', 'partially open is known from 7-16 on');
  }
  if (input.areas.length === 0) fault('/areas_ft2', 'needs at least 1');
  input.areas.forEach((area, i) => {
    if (!(area > 0)) fault(`/areas_ft2/${i}`, 'must be over 0 ft2');
  });
  return faults;
}
