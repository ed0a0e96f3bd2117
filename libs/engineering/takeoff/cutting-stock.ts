// Cutting trims from the fewest stock lengths: what a solver is asked and must give, the check of
// what it gave, and an exact search of our own that suffices for an ordinary roof.

/** Whole sixteenths of an inch throughout, so that fits are exact. */
export interface StockProblem {
  readonly stock: number;
  /** Each cut with its length; none over the stock. */
  readonly cuts: readonly number[];
}

export interface StockPlan {
  /** The cuts of each stock length. */
  readonly stocks: readonly (readonly number[])[];
  /** Whether no plan with fewer stocks exists; false where the search was given up. */
  readonly proved: boolean;
}

/** Solves the problem, or gives up. What it gives is checked before it is used. */
export type SolveStock = (problem: StockProblem) => StockPlan | null;

const sum = (numbers: readonly number[]): number => numbers.reduce((total, n) => total + n, 0);

/** No plan has fewer stocks: all lengths laid end to end, or the cuts over half a stock. */
export function fewestStocks({ stock, cuts }: StockProblem): number {
  const long = cuts.filter((cut) => 2 * cut > stock).length;
  return Math.max(long, Math.ceil(sum(cuts) / stock));
}

/** Whether every stock is filled with whole cuts that fit, and every cut is made exactly once. */
export function planHolds({ stock, cuts }: StockProblem, { stocks }: StockPlan): boolean {
  const made = stocks.flat().sort((p, q) => p - q);
  const asked = cuts.toSorted((p, q) => p - q);
  return (
    made.length === asked.length &&
    made.every((cut, i) => Number.isInteger(cut) && cut === asked[i]) &&
    stocks.every((each) => each.length > 0 && sum(each) <= stock)
  );
}

/** The solver's plan where it holds and needs no more stocks than the search; else the search's. */
export function cutStock(problem: StockProblem, solve?: SolveStock): StockPlan {
  const own = searchPlan(problem);
  const given = own.proved || solve === undefined ? null : solve(problem);
  if (given === null || !planHolds(problem, given)) return own;
  return given.stocks.length <= own.stocks.length ? given : own;
}

/** Longest cut first, each into the first stock that it fits. */
export function firstFit({ stock, cuts }: StockProblem): StockPlan {
  const stocks: number[][] = [];
  const left: number[] = [];
  for (const cut of cuts.toSorted((p, q) => q - p)) {
    const found = left.findIndex((room) => room >= cut);
    const i = found >= 0 ? found : stocks.push([]) - 1;
    stocks[i]!.push(cut);
    left[i] = (left[i] ?? stock) - cut;
  }
  return { stocks, proved: false };
}

/** Tried placements before the search is given up; counted, so that the answer never varies. */
const MOST_TRIES = 100_000;

/** Branch and bound over the longest cut left; starts from first fit. */
export function searchPlan(problem: StockProblem, mostTries = MOST_TRIES): StockPlan {
  const { stock } = problem;
  const cuts = problem.cuts.toSorted((p, q) => q - p);
  const least = fewestStocks(problem);
  let best = firstFit(problem).stocks.map((each) => [...each]);
  let tries = 0;
  const stocks: number[][] = [];
  const left: number[] = [];
  const place = (i: number, rest: number): void => {
    if (best.length === least || tries++ > mostTries) return;
    const cut = cuts[i];
    if (cut === undefined) {
      best = stocks.map((each) => [...each]);
      return;
    }
    const beyond = Math.max(0, Math.ceil((rest - sum(left)) / stock));
    if (stocks.length + beyond >= best.length) return;
    const tried = new Set<number>();
    for (let s = 0; s < stocks.length; s++) {
      const room = left[s]!;
      if (room < cut || tried.has(room)) continue;
      tried.add(room);
      stocks[s]!.push(cut);
      left[s] = room - cut;
      place(i + 1, rest - cut);
      left[s] = room;
      stocks[s]!.pop();
    }
    if (stocks.length + 1 >= best.length) return;
    stocks.push([cut]);
    left.push(stock - cut);
    place(i + 1, rest - cut);
    stocks.pop();
    left.pop();
  };
  if (best.length > least) place(0, sum(cuts));
  return { stocks: best, proved: best.length === least || tries <= mostTries };
}
