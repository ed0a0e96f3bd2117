// How a load chart is read: the load at a span, and the longest span that bears a demand.

export interface GaugeLine {
  /** "24 gauge (0.0236 in)". */
  readonly gauge: string;
  readonly points: readonly { readonly span_in: number; readonly load_psf: number }[];
}

/** The charted load at a span; undefined beyond the longest row and short of the shortest. */
export function loadAt(
  { points }: GaugeLine,
  span_in: number,
  interpolation: boolean,
): number | undefined {
  const next = points.find((each) => each.span_in >= span_in);
  const last = points.findLast((each) => each.span_in <= span_in);
  if (!next) return undefined;
  if (!interpolation || !last || last.span_in === next.span_in) return next.load_psf;
  const share = (span_in - last.span_in) / (next.span_in - last.span_in);
  return last.load_psf + share * (next.load_psf - last.load_psf);
}

/** The longest span that bears the demand, rounded down to a tenth of an inch; null for none. */
export function longestSpan(
  gauge: GaugeLine,
  demand: number,
  interpolation: boolean,
): number | null {
  const bears = gauge.points.filter(({ load_psf }) => load_psf >= demand);
  const last = bears.at(-1);
  if (!last) return null;
  const next = gauge.points.find(({ span_in }) => span_in > last.span_in);
  if (!interpolation || !next) return last.span_in;
  const share = (last.load_psf - demand) / (last.load_psf - next.load_psf);
  return Math.floor((last.span_in + share * (next.span_in - last.span_in)) * 10 + 1e-9) / 10;
}
