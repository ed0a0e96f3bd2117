// Cutting stock by the HiGHS integer solver: patterns of cuts that fit one stock length, and how
// often each is cut. What comes back is rounded to whole numbers and checked again in them.

import highsModule from 'highs';
import { planHolds, type SolveStock, type StockPlan, type StockProblem } from '#engineering';

/** The package's types describe its CommonJS form; imported, the default is the loader itself. */
const loadHighs = highsModule as unknown as typeof highsModule.default;

/** More patterns than this are not worth the model; the caller's own plan then stands. */
const MOST_PATTERNS = 4_000;
/**
 * Nobody else is answered meanwhile, so the search is short; counted in nodes, so that the answer
 * never depends on how busy the machine is. The time is a last resort.
 */
const MOST_NODES = 200;
const TIME_LIMIT_S = 5;

interface Demand {
  readonly cut: number;
  readonly count: number;
}

/** Loads the solver once; what it returns answers at once, and gives up with null. */
export async function loadCuttingStock(): Promise<SolveStock> {
  const highs = await loadHighs();
  return (problem) => {
    const demands = demandsOf(problem);
    if (demands.length === 0) return { stocks: [], proved: true };
    const patterns = patternsOf(problem.stock, demands);
    if (patterns === null) return null;
    const solved = highs.solve(model(demands, patterns), {
      mip_max_nodes: MOST_NODES,
      time_limit: TIME_LIMIT_S,
      output_flag: false,
      mip_rel_gap: 0,
      mip_abs_gap: 0.99,
    });
    const times = patterns.map((_, i) => Math.round(primal(solved.Columns[`p${i}`])));
    const plan = planOf(demands, patterns, times, solved.Status === 'Optimal');
    return plan !== null && planHolds(problem, plan) ? plan : null;
  };
}

const primal = (column: object | undefined): number =>
  column !== undefined && 'Primal' in column && typeof column.Primal === 'number'
    ? column.Primal
    : 0;

function demandsOf({ cuts }: StockProblem): readonly Demand[] {
  const counts = new Map<number, number>();
  for (const cut of cuts) counts.set(cut, (counts.get(cut) ?? 0) + 1);
  return [...counts].map(([cut, count]) => ({ cut, count })).sort((p, q) => q.cut - p.cut);
}

/** Every way to fill one stock so that no further cut fits; null where there are too many. */
function patternsOf(
  stock: number,
  demands: readonly Demand[],
): readonly (readonly number[])[] | null {
  const found: number[][] = [];
  const times = demands.map(() => 0);
  const fill = (i: number, room: number): boolean => {
    const demand = demands[i];
    if (demand === undefined) {
      const full = demands.every(({ cut, count }, j) => cut > room || times[j] === count);
      if (full) found.push([...times]);
      return found.length <= MOST_PATTERNS;
    }
    for (let n = Math.min(demand.count, Math.floor(room / demand.cut)); n >= 0; n--) {
      times[i] = n;
      if (!fill(i + 1, room - n * demand.cut)) return false;
    }
    return true;
  };
  return fill(0, stock) ? found : null;
}

/** Fewest stocks so that every cut is made at least as often as it is asked for. */
function model(demands: readonly Demand[], patterns: readonly (readonly number[])[]): string {
  const names = patterns.map((_, i) => `p${i}`);
  const rows = demands.map(({ count }, j) => {
    const terms = patterns.flatMap((times, i) => (times[j]! > 0 ? [`${times[j]} p${i}`] : []));
    return ` c${j}: ${terms.join(' + ')} >= ${count}`;
  });
  return [
    'Minimize',
    ` stocks: ${names.join(' + ')}`,
    'Subject To',
    ...rows,
    'General',
    ` ${names.join(' ')}`,
    'End',
  ].join('\n');
}

/** Stock by stock; a cut beyond what is asked for is left out. Null where a cut is missing. */
function planOf(
  demands: readonly Demand[],
  patterns: readonly (readonly number[])[],
  times: readonly number[],
  proved: boolean,
): StockPlan | null {
  const left = demands.map(({ count }) => count);
  const stocks = patterns
    .flatMap((pattern, i) => Array.from({ length: times[i] ?? 0 }, () => pattern))
    .map((pattern) =>
      pattern.flatMap((n, j) => {
        const made = Math.min(n, left[j]!);
        left[j]! -= made;
        return Array<number>(made).fill(demands[j]!.cut);
      }),
    )
    .filter((stock) => stock.length > 0);
  return left.some((n) => n > 0) ? null : { stocks, proved };
}
