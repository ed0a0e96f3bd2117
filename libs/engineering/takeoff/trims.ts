// Trims by kind of edge: each edge in full stock lengths and one remainder, the remainders cut from
// as few stock lengths as can be.

import type { Fault } from '../check.js';
import { cutStock, type SolveStock } from './cutting-stock.js';
import type { EdgeRun } from './edges.js';
import type { TakeOffRequest } from './request.js';

export interface CutPattern {
  readonly cuts_in: readonly number[];
  readonly times: number;
}

export interface TrimLine {
  readonly name: string;
  readonly stock_in: number;
  /** Stock lengths to buy. */
  readonly stocks: number;
  readonly edges_ft: number;
  readonly bought_ft: number;
  /** Bought but neither on an edge nor in a lap. */
  readonly offcut_ft: number;
  readonly weight_lb: number;
  readonly screws: number | null;
  /** How each stock length is cut, full ones included. */
  readonly patterns: readonly CutPattern[];
  /** Whether no way to cut the remainders needs fewer stocks. */
  readonly proved: boolean;
}

type Trim = TakeOffRequest['trims'][number];
const PER_INCH = 16;

/** A trim that laps its whole stock is a fault at its place. */
export function trimFaults(trims: readonly Trim[], faults: Fault[]): void {
  trims.forEach(({ name, stock_in, lap_in }, i) => {
    if (lap_in * 2 > stock_in) {
      faults.push({
        pointer: `/trims/${i}/lap_in`,
        message: `of ${name} must be at most half its stock length`,
      });
    }
  });
}

export function trimLine(trim: Trim, all: readonly EdgeRun[], solve?: SolveStock): TrimLine {
  const runs = all.filter(({ edge }) => trim.edges.includes(edge));
  const stock = Math.floor(trim.stock_in * PER_INCH);
  const lap = Math.ceil(trim.lap_in * PER_INCH);
  const laid = runs.map(({ length_ft }) => piecesAlong(length_ft, stock, lap));
  const full = laid.reduce((total, each) => total + each.full, 0);
  const cuts = laid.map(({ remainder }) => remainder);
  const plan = cutStock({ stock, cuts }, solve);
  const edges_ft = runs.reduce((total, { length_ft }) => total + length_ft, 0);
  const stocks = full + plan.stocks.length;
  const bought_ft = (stocks * trim.stock_in) / 12;
  const used = full * stock + cuts.reduce((total, cut) => total + cut, 0);
  const spacing = trim.screw_spacing_in;
  return {
    name: trim.name,
    stock_in: trim.stock_in,
    stocks,
    edges_ft,
    bought_ft,
    offcut_ft: bought_ft - used / PER_INCH / 12,
    weight_lb: bought_ft * trim.weight_plf,
    screws:
      spacing === undefined
        ? null
        : runs.reduce(
            (n, { length_ft }) => n + Math.ceil((12 * length_ft) / spacing - 1e-6) + 1,
            0,
          ),
    patterns: patternsOf([...Array.from({ length: full }, () => [stock]), ...plan.stocks]),
    proved: plan.proved,
  };
}

/** Full stocks, each lapping the next, and what then remains: over a lap, at most a stock. */
function piecesAlong(
  length_ft: number,
  stock: number,
  lap: number,
): { full: number; remainder: number } {
  const length = Math.ceil(length_ft * 12 * PER_INCH - 1e-6);
  const full = Math.max(0, Math.ceil((length - stock) / (stock - lap)));
  return { full, remainder: length - full * (stock - lap) };
}

function patternsOf(stocks: readonly (readonly number[])[]): readonly CutPattern[] {
  const times = new Map<string, { cuts_in: readonly number[]; times: number }>();
  for (const cuts of stocks) {
    const cuts_in = cuts.toSorted((p, q) => q - p).map((cut) => cut / PER_INCH);
    const key = cuts_in.join(' ');
    times.set(key, { cuts_in, times: (times.get(key)?.times ?? 0) + 1 });
  }
  return [...times.values()].sort((p, q) => q.times - p.times || q.cuts_in[0]! - p.cuts_in[0]!);
}
