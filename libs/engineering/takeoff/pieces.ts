// Pieces to order for the runs of a plane: by the longest edge of the strip, with what is added or
// held back at each kind of edge, rounded up, and end-lapped where over the longest piece.

import type { Fault } from '../check.js';
import type { Side } from './plane.js';
import type { PanelRequest } from './request.js';
import type { Run } from './strips.js';

export interface Piece {
  /** As ordered. */
  readonly length_in: number;
  /** As laid, before rounding: from below to above, allowances and lap included. */
  readonly from_ft: number;
  readonly to_ft: number;
}

export interface PiecedRun {
  readonly run: Run<Side>;
  /** From below. */
  readonly pieces: readonly Piece[];
}

export interface Pieced {
  readonly runs: readonly PiecedRun[];
  /** Heights of the end laps of this plane, each the lower end of the piece above. */
  readonly laps_ft: readonly number[];
}

interface Reach {
  readonly run: Run<Side>;
  readonly from: number;
  readonly to: number;
}

/** Pieces of every run. A run over the longest piece of a panel that takes no lap is a fault. */
export function piecesOf(
  runs: readonly Run<Side>[],
  panel: PanelRequest,
  at: { readonly pointer: string; readonly plane: string },
  faults: Fault[],
): Pieced {
  const reaches = runs.map((run) => reachOf(run, panel));
  const longest = longestOrdered(panel);
  const over = reaches.filter(({ from, to }) => ordered(to - from, panel) > longest);
  const most = Math.max(0, ...over.map(({ from, to }) => 12 * (to - from)));
  if (over.length > 0 && panel.end_lap_in === undefined) {
    const needs = `${at.plane} needs pieces to ${most.toFixed(2)} in`;
    const message = `${needs}; the longest is ${longest} in and the panel takes no end lap`;
    faults.push({ pointer: at.pointer, message });
    return { runs: [], laps_ft: [] };
  }
  if (over.length > 0 && panel.end_lap_in! >= longest) {
    faults.push({ pointer: '/panel/end_lap_in', message: 'must be under the longest piece' });
    return { runs: [], laps_ft: [] };
  }
  const laps_ft = over.length > 0 ? lapLines(over, panel.end_lap_in! / 12, longest / 12) : [];
  return {
    laps_ft,
    runs: reaches.map((reach) => {
      const lines = over.includes(reach) ? laps_ft : [];
      return { run: reach.run, pieces: cutAt(reach, lines, panel) };
    }),
  };
}

/** Lowest and highest point of a run, each end moved by the allowance of the edge it lies at. */
function reachOf(run: Run<Side>, { ends_in }: PanelRequest): Reach {
  let from = Infinity;
  let to = -Infinity;
  for (const part of run.parts) {
    from = Math.min(
      from,
      Math.min(part.below0, part.below1) - (ends_in[part.below.edge] ?? 0) / 12,
    );
    to = Math.max(to, Math.max(part.above0, part.above1) + (ends_in[part.above.edge] ?? 0) / 12);
  }
  return { run, from, to: Math.max(from, to) };
}

/** The longest piece in the multiples that are ordered, in. */
const longestOrdered = ({ longest_ft, round_up_in }: PanelRequest): number =>
  Math.floor((12 * longest_ft) / round_up_in + ROUNDOFF) * round_up_in;

const ROUNDOFF = 1e-6;

/** A length in feet as ordered, in: up to the next multiple, and not under the least piece. */
export function ordered(
  length_ft: number,
  { round_up_in, least_piece_in = 0 }: PanelRequest,
): number {
  const multiples = Math.ceil(Math.max(12 * length_ft, least_piece_in) / round_up_in - ROUNDOFF);
  return Math.max(1, multiples) * round_up_in;
}

/**
 * Laps run in lines across the plane, evenly between the lowest and the highest end of what is over
 * the longest piece: with m pieces of equal length, m = ceil((L - lap) / (longest - lap)).
 */
function lapLines(over: readonly Reach[], lap: number, longest: number): readonly number[] {
  const low = Math.min(...over.map(({ from }) => from));
  const high = Math.max(...over.map(({ to }) => to));
  const count = Math.ceil((high - low - lap) / (longest - lap) - ROUNDOFF);
  const rise = (high - low - lap) / count;
  return Array.from({ length: count - 1 }, (_, i) => low + (i + 1) * rise);
}

/** A line within one lap of the upper end is left out: the piece below reaches that end. */
function cutAt(
  { from, to }: Reach,
  lines: readonly number[],
  panel: PanelRequest,
): readonly Piece[] {
  const lap = (panel.end_lap_in ?? 0) / 12;
  const starts = [from, ...lines.filter((y) => y > from && y < to - lap - ROUNDOFF)];
  return starts.map((start, i) => {
    const above = starts[i + 1];
    const end = above === undefined ? to : above + lap;
    return { length_in: ordered(end - start, panel), from_ft: start, to_ft: end };
  });
}
