// One convex piece of a wind zone, in feet.

import type { Polygon } from './plane-geometry.js';
import type { Part } from './zone-pressure.js';

export interface ZonePiece {
  readonly part: Part;
  readonly zone: string;
  /** Convex, counter-clockwise. Plan: x along the length, y along the width, from a wall corner. */
  readonly polygon: Polygon;
  /** Width of the zone's strip; absent for the field of the roof or wall. */
  readonly width_ft?: number;
  /** Walls only; the polygon is then an elevation: x from the left corner, y up. */
  readonly face?: 'eave' | 'high-eave' | 'end';
}
