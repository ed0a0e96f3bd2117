// What a reader must know about a wind result: minimums that govern, figures whose text has still
// to be seen, and what was assumed.

import { TO_BE_CONFIRMED } from '../check.js';
import type { Coefficients } from './roof-figure.js';
import type { WindSurfaceInput } from './surface-input.js';
import type { ZonePressure } from './zone-pressure.js';

export function surfaceNotes(
  input: WindSurfaceInput,
  c: Coefficients,
  zones: readonly ZonePressure[],
): string[] {
  const notes = [
    'Strength level: allowable stress design takes 0.6 of these, once, in the combinations.',
    ...confirm(c.low.unconfirmed),
    ...(c.high === c.low ? [] : confirm(c.high.unconfirmed)),
    ...(input.roof.overhang ? overhangNotes(input, c) : []),
    ...hipNotes(input),
  ];
  if (input.roof.theta <= 10) {
    notes.push(
      `The 0.9 on walls under roofs to 10 degrees is not taken (larger): ${TO_BE_CONFIRMED}.`,
    );
  }
  if (input.enclosure === 'open') {
    notes.push(
      'Open building: GC_pi is 0; free roofs have other figures, which are not calculated here.',
    );
  }
  if ((input.parapet ?? 0) >= 3 && input.roof.theta <= 7) {
    notes.push(
      'The reduction of zone 3 to zone 2 behind a 3 ft parapet is permitted, but not taken.',
    );
  }
  if (input.areas.some((area) => area > 700)) {
    notes.push('A tributary area over 700 ft2 may be designed by the main frame provisions.');
  }
  const governed = [
    ...new Set(zones.filter((z) => z.minimumGoverns !== 'none').map((z) => `${z.part} ${z.zone}`)),
  ];
  if (governed.length > 0) {
    notes.push(`The 16 psf minimum (30.2.2) governs in: ${governed.join(', ')}.`);
  }
  return notes;
}

const confirm = (reason: string | undefined): string[] =>
  reason === undefined ? [] : [`${capital(reason)}: ${TO_BE_CONFIRMED}.`];

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

function overhangNotes(input: WindSurfaceInput, c: Coefficients): string[] {
  const notes = [
    "Overhang: outward is net of top and soffit; inward takes the roof's positive.",
    ...(c.low.overhangUnconfirmed === c.low.unconfirmed ? [] : confirm(c.low.overhangUnconfirmed)),
  ];
  if (input.edition === '7-22') {
    notes.push(`GC_pi is kept in the overhang's pressure (larger): ${TO_BE_CONFIRMED}.`);
  }
  return notes;
}

function hipNotes(input: WindSurfaceInput): string[] {
  const { edition, roof } = input;
  if (roof.shape !== 'hip' || roof.theta <= 7) return [];
  if (edition === '7-10' && roof.theta <= 25) {
    return [
      `Hips to 25 degrees may take zone 3 as zone 2; it is kept (larger): ${TO_BE_CONFIRMED}.`,
    ];
  }
  if (edition === '7-16' && roof.theta <= 20) {
    return [`h/B is taken with the least horizontal dimension: ${TO_BE_CONFIRMED}.`];
  }
  return [];
}
