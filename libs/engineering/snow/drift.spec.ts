// Drifts and slides that the calculator does not ask about: neighbors, projections, ice, retention.

import { describe, expect, test } from '@jest/globals';
import { feet, inches, pcf, per12, psf } from '../units.js';
import { driftHeight, type DriftSite } from './drift-height.js';
import { driftAtProjection, driftFromNeighbor } from './drift.js';
import { exposureFactor } from './flat-roof.js';
import { eaveIce, retentionDrag, slides } from './sliding.js';

const site: DriftSite = { edition: '7-16', pg: psf(25), gamma: pcf(17.25), Is: 1 };

describe('drift from a separate building', () => {
  test('none from 20 ft or from six times the drop', () => {
    expect(driftFromNeighbor(site, feet(20), feet(30), feet(100))).toBe(null);
    expect(driftFromNeighbor(site, feet(12), feet(2), feet(100))).toBe(null);
  });
  test('limited by the gap, over at most six heights', () => {
    const drift = driftFromNeighbor(site, feet(6), feet(2), feet(100));
    expect(drift).toEqual({ hd_ft: 1, pd_psf: 17.25, width_ft: 6 });
    const open = driftFromNeighbor(site, feet(5), feet(30), feet(100));
    expect(open?.hd_ft).toBe(driftHeight(site, feet(100)));
  });
});

describe('drift at a projection', () => {
  const it = { side: feet(20), clearBelow: feet(0), upwind: feet(30), downwind: feet(80) };
  test('0.75 of the height for the longer side, capped by the projection', () => {
    const hd = driftHeight(site, feet(80));
    expect(driftAtProjection(site, it, psf(17.5))?.height_ft).toBeCloseTo(0.75 * hd, 12);
    const low = driftAtProjection(site, { ...it, height: feet(2) }, psf(17.25));
    expect(low?.height_ft).toBeCloseTo(1, 12);
  });
  test('none under 15 ft of side or 2 ft clear of the roof', () => {
    expect(driftAtProjection(site, { ...it, side: feet(14.9) }, psf(17.5))).toBe(null);
    expect(driftAtProjection(site, { ...it, clearBelow: feet(2) }, psf(17.5))).toBe(null);
  });
});

describe('sliding, retention, ice', () => {
  test('what slides: slippery over 1/4:12, other over 2:12; not at the limit', () => {
    expect(slides('slippery-unobstructed', per12(0.25))).toBe(false);
    expect(slides('slippery-unobstructed', per12(0.26))).toBe(true);
    expect(slides('other', per12(2))).toBe(false);
    expect(slides('other', per12(2.1))).toBe(true);
  });
  test('drag is the weight on the run times the sine, shared by the seams', () => {
    const drag = retentionDrag(psf(35), per12(6), feet(40), inches(18));
    expect(drag.per_seam_lb).toBeCloseTo(35 * 40 * 1.5 * Math.sin(Math.atan(0.5)), 9);
    expect(retentionDrag(psf(35), per12(0), feet(40), inches(18)).plf).toBe(0);
  });
  test('eave ice on warm roofs alone', () => {
    expect(eaveIce(psf(20), 20, false)).toBe(40);
    expect(eaveIce(psf(20), 20, true)).toBe(null);
    expect(eaveIce(psf(20), 30, false)).toBe(null);
  });
  test('no exposure factor where the table says not applicable', () => {
    expect(exposureFactor('above-tree-line', 'sheltered')).toBe(undefined);
  });
});
