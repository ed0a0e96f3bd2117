// One bend of a sheet as an exact annular sector: its area, its moments about y = 0, its reach.

/** A bend: always fully effective. area, first and second moment are about y = 0. */
export interface Bend {
  readonly turn: number;
  readonly insideRadius: number;
  readonly length: number;
  readonly area: number;
  readonly first: number;
  readonly second: number;
}

/** How high and low the sheet reaches so far. */
export interface Extent {
  top: number;
  bottom: number;
}

interface Place {
  readonly x: number;
  readonly y: number;
}

/**
 * Exact annular sector, its reach taken into `extent`: area r t phi; moments from the integrals of
 * rho^2 sin and rho^3 sin^2.
 */
export function bend(
  a: Place,
  b: Place & { readonly R: number },
  turn: number,
  t: number,
  extent: Extent,
): Bend {
  const r = b.R + t / 2;
  const side = Math.sign(turn);
  const phi = Math.abs(turn);
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const length = Math.sqrt(dx * dx + dy * dy);
  const [ux, uy] = [dx / length, dy / length];
  const trim = r * Math.tan(phi / 2);
  const centerY = b.y - trim * uy + r * side * ux;
  const start = Math.atan2(-side * ux, side * uy);
  const low = side > 0 ? start : start - phi;
  const high = low + phi;
  if (covers(low, high, Math.PI / 2)) extent.top = Math.max(extent.top, centerY + r + t / 2);
  if (covers(low, high, -Math.PI / 2)) {
    extent.bottom = Math.min(extent.bottom, centerY - r - t / 2);
  }
  const area = r * t * phi;
  const one = Math.cos(low) - Math.cos(high);
  const two = phi / 2 - (Math.sin(2 * high) - Math.sin(2 * low)) / 4;
  const m2 = r * r * t + t ** 3 / 12;
  const m3 = r ** 3 * t + (r * t ** 3) / 4;
  return {
    turn: phi,
    insideRadius: b.R,
    length: r * phi,
    area,
    first: centerY * area + m2 * one,
    second: centerY * centerY * area + 2 * centerY * m2 * one + m3 * two,
  };
}

function covers(low: number, high: number, angle: number): boolean {
  const from = angle - 2 * Math.PI * Math.ceil((angle - high) / (2 * Math.PI) - 1e-12);
  return from >= low - 1e-12;
}
